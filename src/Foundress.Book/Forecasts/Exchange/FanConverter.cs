using System.Buffers.Binary;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>
/// A fan as one Base64 text: for each point its day (days since 0001-01-01, a 32-bit integer) and its five levels (32-bit
/// floats), least significant byte first. Read ten times as fast under an interpreter as numbers in figures.
/// </summary>
internal sealed class FanConverter : JsonConverter<IReadOnlyList<FanPoint>>
{
    private const int PointBytes = 24;

    public override IReadOnlyList<FanPoint> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String || !reader.TryGetBytesFromBase64(out var bytes) || bytes.Length % PointBytes != 0)
            throw new JsonException($"A fan is a Base64 text of {PointBytes} bytes a point.");
        var points = new FanPoint[bytes.Length / PointBytes];
        for (var i = 0; i < points.Length; i++)
        {
            ReadOnlySpan<byte> point = bytes.AsSpan(i * PointBytes, PointBytes);
            var day = BinaryPrimitives.ReadInt32LittleEndian(point);
            if (day < 0 || day > DateOnly.MaxValue.DayNumber)
                throw new JsonException($"A fan's point names day {day}.");
            points[i] = new FanPoint(DateOnly.FromDayNumber(day), Level(point, 0), Level(point, 1), Level(point, 2), Level(point, 3), Level(point, 4));
        }

        return points;
    }

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<FanPoint> value, JsonSerializerOptions options)
    {
        var bytes = new byte[value.Count * PointBytes];
        for (var i = 0; i < value.Count; i++)
        {
            var fan = value[i];
            var point = bytes.AsSpan(i * PointBytes, PointBytes);
            BinaryPrimitives.WriteInt32LittleEndian(point, fan.On.DayNumber);
            BinaryPrimitives.WriteSingleLittleEndian(point[4..], (float)fan.Low);
            BinaryPrimitives.WriteSingleLittleEndian(point[8..], (float)fan.LowerQuarter);
            BinaryPrimitives.WriteSingleLittleEndian(point[12..], (float)fan.Middle);
            BinaryPrimitives.WriteSingleLittleEndian(point[16..], (float)fan.UpperQuarter);
            BinaryPrimitives.WriteSingleLittleEndian(point[20..], (float)fan.High);
        }

        writer.WriteBase64StringValue(bytes);
    }

    private static double Level(ReadOnlySpan<byte> point, int level) =>
        BinaryPrimitives.ReadSingleLittleEndian(point[(4 + (4 * level))..]) is >= 0 and <= float.MaxValue and var one
            ? one
            : throw new JsonException("A fan's point has five levels, each 0 or more.");
}
