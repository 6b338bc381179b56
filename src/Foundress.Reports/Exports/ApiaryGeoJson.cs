using Foundress.Book.State;

namespace Foundress.Reports.Exports;

/// <summary>Writes the apiaries as GeoJSON (RFC 7946): points in WGS 84, longitude first; an apiary without a place has no geometry.</summary>
public static class ApiaryGeoJson
{
    /// <summary>The apiaries of a book as a feature collection.</summary>
    /// <param name="state">The book.</param>
    /// <param name="today">The day on which colonies are counted.</param>
    public static string Write(BookState state, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(state);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteStartArray("features");
            foreach (var apiary in state.ApiariesByName)
            {
                json.WriteStartObject();
                json.WriteString("type", "Feature");
                json.WriteString("id", apiary.Id.ToString());
                if (apiary is { Latitude: { } latitude, Longitude: { } longitude })
                {
                    json.WriteStartObject("geometry");
                    json.WriteString("type", "Point");
                    json.WriteStartArray("coordinates");
                    json.WriteNumberValue(longitude);
                    json.WriteNumberValue(latitude);
                    json.WriteEndArray();
                    json.WriteEndObject();
                }
                else
                {
                    json.WriteNull("geometry");
                }

                json.WriteStartObject("properties");
                json.WriteString("name", apiary.Name);
                json.WriteNumber("colonies", state.ColoniesIn(apiary.Id, today).Count);
                json.Optional("note", apiary.Note);
                json.WriteEndObject();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }
}
