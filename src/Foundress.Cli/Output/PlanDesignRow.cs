namespace Foundress.Cli.Output;

/// <summary>What one number of colonies buys: standard error over mean, and chances.</summary>
internal sealed record PlanDesignRow(int Colonies, double RelativeError, double FindsOne, double WaitsTooLong, double ActsInVain);
