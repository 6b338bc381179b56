namespace Foundress.Book.Proving;

/// <summary>A group of controls whose latest proof in an apiary showed a reduced effect.</summary>
/// <param name="ModeId">The group.</param>
/// <param name="Agent">Id of the control that was used.</param>
/// <param name="Start">Its first day.</param>
public sealed record ReducedEffect(string ModeId, string Agent, DateOnly Start);
