namespace Foundress.Server.Endpoints;

/// <summary>The last jar of a colony.</summary>
/// <param name="On">The day it was taken.</param>
/// <param name="Per100Bees">Mites counted per 100 bees.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="Standing">Where it stands to the line then in force: below, unclear or above; none when it is not judged.</param>
/// <param name="Method">How it was counted.</param>
internal sealed record LastJar(DateOnly On, double Per100Bees, double Lower, double Upper, string? Standing, string Method);
