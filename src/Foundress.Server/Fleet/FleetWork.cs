using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Foundress.Book;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Jobs;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Server.Books;
using Foundress.Storage;
using Foundress.Storage.Work;

namespace Foundress.Server.Fleet;

/// <summary>The forecast of an apiary as a piece of work that any server on the same database can do, with the same result.</summary>
internal static class FleetWork
{
    private const int RecordDays = 500;

    /// <summary>The forecast of an apiary as the book stands now.</summary>
    internal static async Task<WorkItem> ForAsync(string operation, ApiaryId apiary, DateOnly today, OperationParts parts, BookStore store, CancellationToken cancellation)
    {
        var sequences = (await parts.PartAsync(apiary, cancellation))?.Sequences ?? [];
        var input = JsonSerializer.Serialize(new FleetInput(operation, apiary, today, store.Incarnation, sequences), FleetJson.Default.FleetInput);
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(input)));
        return new WorkItem(new WorkKey(operation, apiary.Value, hash, ProgramBuild.Name), input);
    }

    /// <summary>Does it.</summary>
    /// <param name="input">What <see cref="ForAsync"/> wrote.</param>
    /// <param name="store">The book.</param>
    /// <param name="seasons">The bees' years this worker has made so far.</param>
    /// <param name="goOn">Asked between two colonies: whether the work is still wanted of this worker.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The forecast as JSON; null when it is no longer wanted.</returns>
    /// <exception cref="InvalidOperationException">Entries it depends on are not there any more.</exception>
    internal static async Task<string?> DoAsync(string input, BookStore store, BroodSeasons seasons, Func<Task<bool>> goOn, CancellationToken cancellation)
    {
        var wanted = JsonSerializer.Deserialize(input, FleetJson.Default.FleetInput)!;
        var entries = await store.ReadAtAsync(wanted.Operation, wanted.Sequences, cancellation);
        if (store.Incarnation != wanted.Incarnation || entries.Count != wanted.Sequences.Count)
            throw new InvalidOperationException("The book was set back or an entry took another place since this was asked for.");
        var ledger = new Ledger();
        ledger.Add(entries);
        var request = new ForecastRequest(wanted.Apiary, wanted.Today, new ForecastOptions().Particles, RecordDays);
        string? result = null;
        // Many readers share what is worked out ahead: it is kept in one language.
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(Languages.English.Code);
        foreach (var step in new ForecastJob().Run(new JobSetting(ledger, seasons, CultureInfo.InvariantCulture), ForecastJson.Write(request)))
        {
            cancellation.ThrowIfCancellationRequested();
            if (!await goOn())
                return null;
            result = step.Output ?? result;
        }

        return result;
    }

    /// <summary>The bees' years of a worker, made when first needed.</summary>
    internal static BroodSeasons Seasons() => new(KnowledgeBase.In(CultureInfo.InvariantCulture));
}
