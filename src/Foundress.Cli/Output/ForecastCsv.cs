using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Book.Importing;
using Foundress.Book.Wording;
using Foundress.Science;

namespace Foundress.Cli.Output;

/// <summary>Forecasts as CSV: a row for each target, with the quantiles of the mite count and of the level such a jar shows.</summary>
internal static class ForecastCsv
{
    internal static void Write(TextWriter text, IReadOnlyList<BatchTarget> targets, IReadOnlyDictionary<int, JarForecast> forecasts, int quantiles)
    {
        var csv = new CsvWriter(text, ',');
        var names = Enumerable.Range(1, quantiles).Select(i => i.ToString(quantiles < 100 ? "00" : "000", CultureInfo.InvariantCulture)).ToArray();
        csv.Write(["apiary", "colony", "date", "bees", .. names.Select(name => "q" + name), .. names.Select(name => "level_q" + name)]);
        var chances = Enumerable.Range(1, quantiles).Select(i => Chance.Of(i / (quantiles + 1d))).ToArray();
        foreach (var target in targets)
        {
            var prediction = forecasts[target.Row].Prediction;
            csv.Write(
            [
                target.Apiary, target.Colony, Say.IsoDay(target.On), target.Bees.ToString(CultureInfo.InvariantCulture),
                .. chances.Select(chance => prediction.Mites(chance).ToString(CultureInfo.InvariantCulture)),
                .. chances.Select(chance => prediction.Level(chance).Per100Bees.ToString("0.####", CultureInfo.InvariantCulture)),
            ]);
        }
    }
}
