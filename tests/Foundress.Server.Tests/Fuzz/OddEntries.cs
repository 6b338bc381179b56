using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Knowledge;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>Entries in good form whose payloads are not: what a faulty or hostile device of one's own may send.</summary>
internal static class OddEntries
{
    private static readonly Entry[] Good = [.. DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1))];

    private static readonly Entry[] Places = [.. Good.Where(entry => entry.Kind is "apiary" or "colony")];

    private static readonly string[] Kinds = [.. Good.Select(entry => entry.Kind).Distinct(), "unheard-of"];

    private static readonly string[] Odd =
    [
        "null", "true", "0", "-1", "1e308", "-1e308", "2147483647", "-2147483648", "9223372036854775807", "1e-320", "0.1", "12345678901234567890", "\"\"", "\"x\"", "\"0001-01-01\"", "\"9999-12-31\"",
        "\"1900-01-01\"", "\"2026-02-28\"", "\"2026-07-01T10:00:00Z\"", "\"NaN\"", "[]", "{}", "[[]]", "[null]", "[1,2,3]", "{\"a\":1}", "\"\\u0000\"", "\"\\u202e<script>\"", "\"\\ud83d\\udc1d\"", "\"a,b;c\\r\\nd\"", "\"=1+1\"",
        "\"00000000-0000-0000-0000-000000000000\"", "\"ffffffff-ffff-ffff-ffff-ffffffffffff\"",
    ];

    // Fields that the invented book does not happen to use are tried, too.
    private static readonly string[] Fields = [.. typeof(Foundress.Book.Records.Record).Assembly.GetTypes()
        .Where(type => type.Namespace == "Foundress.Book.Records" && type.IsClass)
        .SelectMany(type => type.GetProperties()).Select(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>A small book: its apiaries and colonies, other entries of every kind, and some of them made odd.</summary>
    public static Gen<Entry[]> Books(string operation) =>
        Gen.Select(Gen.Int[0, Good.Length - 1].Array[10, 40], Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 10_000], Gen.Int[0, Odd.Length - 1], Gen.Int[0, 9]).Array[1, 6])
            .Select((picked, oddities) =>
            {
                Entry[] book = [.. Places.Take(60), .. picked.Select(at => Good[at])];
                book = [.. book.DistinctBy(entry => entry.Id).Select(entry => entry with { Operation = operation })];
                foreach (var (which, where, what, how) in oddities)
                {
                    // The later ones are of more kinds.
                    var at = how < 3 ? which % book.Length : book.Length - 1 - (which % Math.Max(1, book.Length - 60));
                    at = Math.Clamp(at, 0, book.Length - 1);
                    book[at] = how switch
                    {
                        9 => book[at] with { Kind = Kinds[where % Kinds.Length] },
                        8 => book[at] with { Schema = where + 2 },
                        7 => book[at] with { Clock = new HybridTime(where % 2 == 0 ? 0 : (1L << 47), 3) },
                        6 => book[at] with { Payload = With(book[at].Payload, Fields[where % Fields.Length], Odd[what]) },
                        _ => book[at] with { Payload = Damaged(book[at].Payload, where, Odd[what]) },
                    };
                }

                return book;
            });

    private static string With(string payload, string field, string odd)
    {
        var root = JsonNode.Parse(payload)!.AsObject();
        root[field] = JsonNode.Parse(odd);
        return root.ToJsonString(new JsonSerializerOptions());
    }

    // Puts something odd in the place of one value, or takes it away.
    private static string Damaged(string payload, int where, string odd)
    {
        var root = JsonNode.Parse(payload)!;
        var places = new List<(JsonNode Parent, string? Name, int Index)>();
        Gather(root, places);
        if (places.Count == 0)
            return payload;
        var (parent, name, index) = places[where % places.Count];
        if (parent is JsonObject fields)
        {
            if (where % 7 == 0)
                fields.Remove(name!);
            else
                fields[name!] = JsonNode.Parse(odd);
        }
        else
        {
            ((JsonArray)parent)[index] = JsonNode.Parse(odd);
        }

        return root.ToJsonString(new JsonSerializerOptions());
    }

    private static void Gather(JsonNode node, List<(JsonNode Parent, string? Name, int Index)> places)
    {
        if (node is JsonObject fields)
        {
            foreach (var (name, value) in fields)
            {
                places.Add((node, name, 0));
                if (value is not null)
                    Gather(value, places);
            }
        }
        else if (node is JsonArray items)
        {
            for (var n = 0; n < items.Count; n++)
            {
                places.Add((node, null, n));
                if (items[n] is { } item)
                    Gather(item, places);
            }
        }
    }
}
