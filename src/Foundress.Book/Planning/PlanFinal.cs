using Foundress.Book.Forecasts;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>A plan worked out with all colonies and all particles.</summary>
/// <param name="Uses">Its controls.</param>
/// <param name="Weight">What it asks.</param>
/// <param name="Reading">What it comes to.</param>
/// <param name="Fan">The level of any one colony.</param>
/// <param name="Controls">Its controls as the rules see them in the plan.</param>
internal sealed record PlanFinal(IReadOnlyList<PlanUse> Uses, PlanWeight Weight, PlanReading Reading, IReadOnlyList<FanPoint> Fan, IReadOnlyList<PlannedControl> Controls);
