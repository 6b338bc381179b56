using System.Globalization;
using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>
/// What of an operation a device takes from its server, the whole book or the parts of chosen apiaries, and how far it has
/// read each. What it writes itself always goes to the server, whatever was chosen.
/// </summary>
/// <param name="store">What the device remembers.</param>
/// <param name="operation">The operation.</param>
public sealed class TakenParts(IExchangeStore store, string operation)
{
    private string ChoiceKey => "takes:" + operation;

    private string TurnKey => "turn:" + operation;

    /// <summary>Which apiaries a kept choice names; none means the whole book.</summary>
    /// <param name="choice">The choice as it is kept; null before anything was chosen, which means the whole book too.</param>
    public static IReadOnlyList<ApiaryId> Read(string? choice) =>
        [.. (choice ?? string.Empty).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => new ApiaryId(Guid.Parse(id)))];

    /// <summary>The choice as it is kept; null before anything was chosen.</summary>
    public Task<string?> ChoiceAsync() => store.GetAsync(ChoiceKey);

    /// <summary>Chooses what to take from now on. What was taken before stays on the device.</summary>
    /// <param name="apiaries">The apiaries; none for the whole book.</param>
    public Task ChooseAsync(IEnumerable<ApiaryId> apiaries) => store.SetAsync(ChoiceKey, string.Join(' ', apiaries));

    /// <summary>
    /// Makes every position that was kept until now void, so that all is read from the start. Also what another tab keeps
    /// that has begun to read before.
    /// </summary>
    /// <param name="clock">The device's clock, for a name that no other tab gives.</param>
    public async Task BeginAnewAsync(HybridClock clock)
    {
        // Two tabs may read one time off their clocks: the number tells a turn from the one before it.
        int.TryParse((await TurnAsync()).Split('@')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var last);
        await store.SetAsync(TurnKey, string.Create(CultureInfo.InvariantCulture, $"{last + 1}@{clock.Tick()}"));
    }

    /// <summary>Whether nothing of the whole book was ever read.</summary>
    internal async Task<bool> IsUntouchedAsync() => await store.GetAsync(Key(null)) is null;

    /// <summary>Names the time since everything began anew last: positions of another turn are void.</summary>
    internal async Task<string> TurnAsync() => await store.GetAsync(TurnKey) ?? string.Empty;

    /// <summary>How far a part was read, and what the part was of then.</summary>
    /// <param name="apiary">Whose part; null for the whole book.</param>
    /// <param name="turn">The turn that is read in.</param>
    internal async Task<(long After, string Members)> PositionAsync(ApiaryId? apiary, string turn)
    {
        // Older versions kept the number alone.
        var kept = (await store.GetAsync(Key(apiary)) ?? string.Empty).Split(' ');
        return long.TryParse(kept[0], NumberStyles.None, CultureInfo.InvariantCulture, out var after) && At(kept, 1) == turn ? (after, At(kept, 2)) : (0, string.Empty);
    }

    /// <summary>Keeps how far a part was read.</summary>
    internal Task KeepPositionAsync(ApiaryId? apiary, string turn, long after, string members) =>
        store.SetAsync(Key(apiary), string.Create(CultureInfo.InvariantCulture, $"{after} {turn} {members}").TrimEnd());

    private static string At(string[] kept, int place) => place < kept.Length ? kept[place] : string.Empty;

    private string Key(ApiaryId? apiary) => ExchangeRound.CursorKey(operation) + (apiary is { } one ? $":{one}" : string.Empty);
}
