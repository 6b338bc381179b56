using Foundress.Web.Pages;

namespace Foundress.Web.Shell;

/// <summary>What the fields of a form are bound to.</summary>
/// <param name="Draft">What was typed.</param>
/// <param name="Problems">What was wrong when it was last sent.</param>
public sealed record FormScope(FormDraft Draft, FormReader Problems);
