using Foundress.Cli;
using Foundress.Cli.Running;

return await CommandLine.RunAsync(args, Surroundings.OfThisProcess());
