using System.Text.Json;
using System.Text.Json.Serialization;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>A fan as one flat array: for each point its day (days since 0001-01-01), then its five levels.</summary>
internal sealed class FanConverter : JsonConverter<IReadOnlyList<FanPoint>>
{
    private const int Decimals = 4;

    public override IReadOnlyList<FanPoint> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
            throw new JsonException("A fan is an array of numbers.");
        var points = new List<FanPoint>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            if (!reader.TryGetInt32(out var day) || day < 0 || day > DateOnly.MaxValue.DayNumber)
                throw new JsonException("A fan's point begins with a day.");
            var (low, lower, middle) = (Level(ref reader), Level(ref reader), Level(ref reader));
            points.Add(new FanPoint(DateOnly.FromDayNumber(day), low, lower, middle, Level(ref reader), Level(ref reader)));
        }

        return points;
    }

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<FanPoint> value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (var point in value)
        {
            writer.WriteNumberValue(point.On.DayNumber);
            writer.WriteNumberValue(Math.Round(point.Low, Decimals));
            writer.WriteNumberValue(Math.Round(point.LowerQuarter, Decimals));
            writer.WriteNumberValue(Math.Round(point.Middle, Decimals));
            writer.WriteNumberValue(Math.Round(point.UpperQuarter, Decimals));
            writer.WriteNumberValue(Math.Round(point.High, Decimals));
        }

        writer.WriteEndArray();
    }

    private static double Level(ref Utf8JsonReader reader) =>
        reader.Read() && reader.TokenType == JsonTokenType.Number && reader.GetDouble() is >= 0 and var level && double.IsFinite(level)
            ? level
            : throw new JsonException("A fan's point has five levels, each 0 or more.");
}
