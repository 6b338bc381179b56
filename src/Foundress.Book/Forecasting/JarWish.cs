namespace Foundress.Book.Forecasting;

/// <summary>A jar to foretell.</summary>
/// <param name="Colony">Place of the colony among those of the apiary.</param>
/// <param name="On">The day of the jar.</param>
/// <param name="Bees">Bees that will be in it, 1 or more.</param>
public sealed record JarWish(int Colony, DateOnly On, int Bees);
