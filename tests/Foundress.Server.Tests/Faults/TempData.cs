namespace Foundress.Server.Tests.Faults;

/// <summary>A data folder that is removed afterwards.</summary>
internal sealed class TempData : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("foundress-test-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
