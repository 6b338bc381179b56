using Foundress.Book.Journal;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>Asks for the forecast of an apiary.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Today">The day it is made on.</param>
/// <param name="Particles">Possible courses for each colony, as in <see cref="ForecastOptions.Particles"/>.</param>
/// <param name="RecordDays">Days of the record used, as in <see cref="ForecastOptions.RecordDays"/>.</param>
/// <param name="Ahead">Days looked ahead, as in <see cref="ForecastOptions.Ahead"/>.</param>
/// <param name="Seed">Seed of everything drawn.</param>
/// <param name="Only">The one colony that is foretold, as in <see cref="ForecastOptions.Only"/>; null for all.</param>
/// <param name="Agent">Id of a control to suppose; null for none.</param>
/// <param name="From">The day it would begin; null with no control.</param>
public sealed record ForecastRequest(
    ApiaryId Apiary, DateOnly Today, int Particles, int RecordDays, int Ahead = 120, ulong Seed = 1, ColonyId? Only = null, string? Agent = null, DateOnly? From = null);
