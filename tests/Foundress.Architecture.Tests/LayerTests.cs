using System.Reflection;
using System.Xml.Linq;

namespace Foundress.Architecture.Tests;

/// <summary>Dependencies point one way, from the faces to the core. Both the project files and the built assemblies are held to it.</summary>
public sealed class LayerTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Foundress.Science"] = [],
        ["Foundress.Knowledge"] = ["Foundress.Science"],
        ["Foundress.Book"] = ["Foundress.Science", "Foundress.Knowledge"],
        ["Foundress.Reports"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book"],
        ["Foundress.Calendar"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book"],
        ["Foundress.Storage"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book"],
        ["Foundress.Accounts"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book", "Foundress.Storage"],
        ["Foundress.Web"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book", "Foundress.Reports"],
        ["Foundress.Cli"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book", "Foundress.Reports", "Foundress.Calendar", "Foundress.Storage", "Foundress.Accounts"],
        ["Foundress.Server"] = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book", "Foundress.Reports", "Foundress.Calendar", "Foundress.Storage", "Foundress.Accounts", "Foundress.Web"],
    };

    private static readonly string[] Core = ["Foundress.Science", "Foundress.Knowledge", "Foundress.Book", "Foundress.Reports"];

    private static readonly string[] NotInTheCore =
    [
        "Microsoft.EntityFrameworkCore", "Microsoft.AspNetCore", "Microsoft.JSInterop", "System.Net.Http", "System.Net.Sockets",
        "System.Text.RegularExpressions", "System.Linq.Expressions", "System.Private.Xml", "System.Xml.ReaderWriter", "System.Data.Common",
    ];

    public static TheoryData<string> Projects => [.. Allowed.Keys];

    public static TheoryData<string> CoreProjects => [.. Core];

    [Fact]
    public void Sources_EveryProject_IsKnownToThisTest() =>
        Assert.Equal(
            Allowed.Keys.Order(),
            Directory.GetDirectories(Path.Combine(SourceTree.Root.FullName, "src")).Select(path => Path.GetFileName(path)!).Order());

    [Theory]
    [MemberData(nameof(Projects))]
    public void ProjectFile_References_PointOnlyDownwards(string project)
    {
        var file = XDocument.Load(Path.Combine(SourceTree.Root.FullName, "src", project, project + ".csproj"));
        var references = file.Descendants("ProjectReference").Select(e => Path.GetFileNameWithoutExtension(e.Attribute("Include")!.Value));
        Assert.Empty(references.Except(Allowed[project]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Assembly_References_PointOnlyDownwards(string project)
    {
        var references = Load(project).GetReferencedAssemblies().Select(name => name.Name!).Where(Allowed.ContainsKey);
        Assert.Empty(references.Except(Allowed[project]));
    }

    [Theory]
    [MemberData(nameof(CoreProjects))]
    public void Core_References_NoPlatformAndNothingHeavyForTheBrowser(string project)
    {
        var references = Load(project).GetReferencedAssemblies().Select(name => name.Name!);
        Assert.DoesNotContain(references, name => NotInTheCore.Any(forbidden => name.StartsWith(forbidden, StringComparison.Ordinal)));
    }

    // The command line's assembly carries the command's own name.
    private static Assembly Load(string project) => Assembly.Load(project == "Foundress.Cli" ? "foundress" : project);
}
