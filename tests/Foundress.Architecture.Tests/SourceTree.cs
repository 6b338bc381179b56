using System.Text;

namespace Foundress.Architecture.Tests;

/// <summary>The files of the tree, without what is built.</summary>
internal static class SourceTree
{
    /// <summary>The folder that holds the solution.</summary>
    public static DirectoryInfo Root { get; } = Find();

    /// <summary>Files under a folder of the tree, with their text.</summary>
    /// <param name="folder">For example <c>src</c>; passed over when it is not there.</param>
    /// <param name="endings">How their names end; all files when none is given.</param>
    public static IEnumerable<(string Path, string Text)> Files(string folder, params string[] endings) =>
        Directory.Exists(Path.Combine(Root.FullName, folder))
            ? Directory.EnumerateFiles(Path.Combine(Root.FullName, folder), "*", SearchOption.AllDirectories)
                .Where(path => (endings.Length == 0 || endings.Any(ending => path.EndsWith(ending, StringComparison.Ordinal)))
                    && !path.Contains("/node_modules/", StringComparison.Ordinal) && !path.Contains("/bin/", StringComparison.Ordinal) && !path.Contains("/obj/", StringComparison.Ordinal))
                .Select(path => (Path.GetRelativePath(Root.FullName, path).Replace('\\', '/'), File.ReadAllText(path, Encoding.UTF8)))
            : [];

    private static DirectoryInfo Find()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root!.FullName, "Foundress.slnx")))
            root = root.Parent;
        return root;
    }
}
