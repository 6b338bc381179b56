using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.State;

namespace Foundress.Book.Jobs;

/// <summary>What every job is given besides its own input.</summary>
/// <param name="Ledger">The book with its entries.</param>
/// <param name="Seasons">The bees' years made so far, and the knowledge they come from.</param>
/// <param name="Culture">How numbers and days are written in sentences.</param>
public sealed record JobSetting(Ledger Ledger, BroodSeasons Seasons, CultureInfo Culture)
{
    /// <summary>What the book says today.</summary>
    public BookState State => Ledger.State;
}
