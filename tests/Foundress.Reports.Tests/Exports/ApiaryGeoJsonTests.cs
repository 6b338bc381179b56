using System.Text.Json;
using CsCheck;
using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Foundress.Reports.Exports;
using NetTopologySuite.Features;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Converters;

namespace Foundress.Reports.Tests.Exports;

public sealed class ApiaryGeoJsonTests
{
    private static readonly JsonSerializerOptions Geo = new() { Converters = { new GeoJsonConverterFactory() } };

    // Read by NetTopologySuite, another library; RFC 7946, section 3.1.1: longitude first.
    [Fact]
    public void Write_DemoBook_AnotherLibraryFindsEveryApiaryAtItsPlace()
    {
        var today = new DateOnly(2026, 9, 1);
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, today));
        var read = JsonSerializer.Deserialize<FeatureCollection>(ApiaryGeoJson.Write(ledger.State, today), Geo)!;
        Assert.Equal(
            ledger.State.ApiariesByName.Select(apiary => (apiary.Name, apiary.Longitude!.Value, apiary.Latitude!.Value)),
            read.Select(feature => ((string)feature.Attributes["name"], ((Point)feature.Geometry).X, ((Point)feature.Geometry).Y)));
    }

    [Fact]
    public void Write_ApiaryWithoutAPlace_HasNoGeometry()
    {
        var feature = Assert.Single(Read(new ApiaryRecord(new ApiaryId(Guid.NewGuid()), "Somewhere \"odd\" <é>")));
        Assert.Null(feature.Geometry);
        Assert.Equal("Somewhere \"odd\" <é>", feature.Attributes["name"]);
    }

    [Fact]
    public void Write_AnyPlace_ComesBackExactly() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180]).Sample((latitude, longitude) =>
        {
            var point = (Point)Assert.Single(Read(new ApiaryRecord(new ApiaryId(Guid.NewGuid()), "A", latitude, longitude))).Geometry;
            Assert.Equal((longitude, latitude), (point.X, point.Y));
        });

    private static FeatureCollection Read(ApiaryRecord record)
    {
        var ledger = new Ledger();
        ledger.Add([new Entry(new EntryId(Guid.NewGuid()), "home", "a", "d", new HybridTime(1, 0), RecordKinds.Apiary, 1, RecordJson.Write(record))]);
        return JsonSerializer.Deserialize<FeatureCollection>(ApiaryGeoJson.Write(ledger.State, new DateOnly(2026, 9, 1)), Geo)!;
    }
}
