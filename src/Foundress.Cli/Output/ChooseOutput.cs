using Foundress.Book.Planning;

namespace Foundress.Cli.Output;

/// <summary>What can be used on a day and what cannot, and the plans searched, as JSON.</summary>
/// <param name="Apiary">The apiary's name.</param>
/// <param name="On">The day.</param>
/// <param name="Controls">Every control.</param>
/// <param name="Plans">The plans; null where none were searched.</param>
internal sealed record ChooseOutput(string Apiary, DateOnly On, IReadOnlyList<ChooseControl> Controls, ControlPlans? Plans);
