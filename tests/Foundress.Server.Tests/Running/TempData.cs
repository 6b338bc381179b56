namespace Foundress.Server.Tests.Running;

/// <summary>A data folder for one test.</summary>
internal sealed class TempData : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("foundress-test-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
