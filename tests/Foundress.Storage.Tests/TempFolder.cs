namespace Foundress.Storage.Tests;

/// <summary>A folder for one test.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("foundress-test-").FullName;

    public DataFolder Data => DataFolder.At(Path);

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
