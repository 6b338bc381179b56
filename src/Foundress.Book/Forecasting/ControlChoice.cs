using Foundress.Knowledge;

namespace Foundress.Book.Forecasting;

/// <summary>Which form is meant where a name leaves it open, such as plain oxalic acid: the one whose usual days are nearest to those in the record.</summary>
internal static class ControlChoice
{
    internal static ControlAgent Of(IReadOnlyList<ControlAgent> agents, int days) =>
        agents.MinBy(agent => Math.Abs(Math.Log((Math.Max(days, 1) + 1d) / (agent.Days.Value + 1d))))!;
}
