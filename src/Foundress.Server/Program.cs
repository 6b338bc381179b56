using Foundress.Server;

return await ServerRun.RunAsync(args, demo: null, Console.Out, Console.Error);
