namespace Foundress.Bench;

internal sealed class BenchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("foundress-bench-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
