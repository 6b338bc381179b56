using Foundress.Server;
using Foundress.Server.Demo;

return await ServerRun.RunAsync(args, new InventedBook(), Console.Out, Console.Error);
