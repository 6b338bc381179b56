namespace Foundress.Book.Forecasting;

/// <summary>A jar asked for in a batch.</summary>
/// <param name="Row">Its row in the file of targets.</param>
/// <param name="Apiary">The apiary, as written there.</param>
/// <param name="Colony">The colony, as written there.</param>
/// <param name="On">The day.</param>
/// <param name="Bees">Bees that will be in it.</param>
public sealed record BatchTarget(int Row, string Apiary, string Colony, DateOnly On, int Bees);
