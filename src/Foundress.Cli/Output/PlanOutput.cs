namespace Foundress.Cli.Output;

/// <summary>A plan as JSON.</summary>
internal sealed record PlanOutput(DateOnly On, int Jars, string Rule, IReadOnlyList<PlanApiary> Apiaries);
