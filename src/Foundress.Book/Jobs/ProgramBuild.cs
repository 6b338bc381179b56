using Foundress.Knowledge;
using Foundress.Science;

namespace Foundress.Book.Jobs;

/// <summary>Names the build of the model and its knowledge: two that bear the same name give the same answers.</summary>
public static class ProgramBuild
{
    /// <summary>The name: letters and digits, another for every build whose code or data differ.</summary>
    public static string Name { get; } = string.Concat(
        typeof(ProgramBuild).Module.ModuleVersionId.ToString("N").AsSpan(0, 12),
        typeof(KnowledgeBase).Module.ModuleVersionId.ToString("N").AsSpan(0, 12),
        typeof(MiteLevel).Module.ModuleVersionId.ToString("N").AsSpan(0, 12));
}
