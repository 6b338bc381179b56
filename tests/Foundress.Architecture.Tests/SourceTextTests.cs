namespace Foundress.Architecture.Tests;

/// <summary>Rules about the text of the tree that no compiler checks.</summary>
public sealed class SourceTextTests
{
    private static readonly string[] Kinds = [".cs", ".razor", ".md", ".json", ".js", ".css", ".html", ".csproj", ".props", ".sh", ".py", ".R", ""];

    // A machine's own path in the tree would break every other clone.
    [Fact]
    public void Files_Text_HoldsNoMachinePath()
    {
        var found = Files().Where(file => file.Text.Contains("/" + "work/", StringComparison.Ordinal) || file.Text.Contains("/" + "root/", StringComparison.Ordinal));
        Assert.Empty(found.Select(file => file.Path));
    }

    // A file that grows past this has stopped being one idea.
    [Fact]
    public void SourceFiles_Length_StaysReadable()
    {
        var long_ = Files().Where(file => file.Path.StartsWith("src/", StringComparison.Ordinal) && file.Path.EndsWith(".cs", StringComparison.Ordinal)
            && !file.Path.Contains("/Migrations/", StringComparison.Ordinal) && file.Text.Count(c => c == '\n') > 400);
        Assert.Empty(long_.Select(file => file.Path));
    }

    // One public type a file, named like the file, so that a type is found by folder alone.
    [Fact]
    public void SourceFiles_Name_IsThatOfTheTypeInside()
    {
        var lost = Files()
            .Where(file => file.Path.StartsWith("src/", StringComparison.Ordinal) && file.Path.EndsWith(".cs", StringComparison.Ordinal) && !file.Path.Contains("/Migrations/", StringComparison.Ordinal))
            .Where(file => Path.GetFileName(file.Path) is not "Program.cs" and not "AssemblyInfo.cs")
            .Where(file => !file.Text.Contains(" " + Path.GetFileNameWithoutExtension(file.Path).Split('.')[0], StringComparison.Ordinal));
        Assert.Empty(lost.Select(file => file.Path));
    }

    private static IEnumerable<(string Path, string Text)> Files() => new[] { "src", "tests", "docs", "eng", "bench", "tools" }
        .SelectMany(folder => SourceTree.Files(folder))
        .Where(file => Kinds.Contains(Path.GetExtension(file.Path)));
}
