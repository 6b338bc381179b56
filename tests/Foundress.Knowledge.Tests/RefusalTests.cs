using System.Text.Json.Nodes;
using CsCheck;

namespace Foundress.Knowledge.Tests;

public sealed class RefusalTests
{
    public static TheoryData<string> Files => [.. KnowledgeBase.Files];

    [Theory]
    [MemberData(nameof(Files))]
    public void Read_AnySourceStatusOrUnitRemoved_NamesFilePlaceAndFix(string file)
    {
        var places = DataFiles.Objects(DataFiles.Tree(file))
            .SelectMany(o => new[] { "source", "status", "unit" }.Where(o.Object.ContainsKey).Select(field => (o.Pointer, Field: field)))
            .DistinctBy(place => (string.Concat(place.Pointer.Where(c => !char.IsAsciiDigit(c))), place.Field)) // one of each kind of place
            .ToArray();

        Assert.NotEmpty(places);
        Assert.All(places, place =>
        {
            var refusal = DataFiles.RefusalOf(file, tree => DataFiles.At(tree, place.Pointer).AsObject().Remove(place.Field));

            Assert.Contains(refusal.Problems, p =>
                p.File == file && p.Place == place.Pointer && p.Message.StartsWith($"\"{place.Field}\" is missing. Add ", StringComparison.Ordinal));
            Assert.Contains($"{file}#{place.Pointer}: \"{place.Field}\" is missing", refusal.Message, StringComparison.Ordinal);
        });
    }

    /// <summary>Whatever one node is turned into, the reader refuses with its own exception or agrees with the schema.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Read_AnyNodeReplaced_RefusesWhatTheSchemaRefuses(string file)
    {
        var pointers = DataFiles.All(DataFiles.Tree(file), "").Select(n => n.Pointer).Where(p => p.Length > 0 && p != "/$schema").ToArray();
        string[] replacements = ["null", "true", "-1", "0.5", "13", "1e999", "\"\"", "\" \"", "\"seen\"", "\"North\"", "[]", "{}", "[null]", "[-1]", "{\"value\":1}"];

        Gen.Select(Gen.Int[0, pointers.Length - 1].Select(i => pointers[i]), Gen.Int[0, replacements.Length - 1].Select(i => replacements[i])).Sample(
            (pointer, json) =>
            {
                var tree = DataFiles.Tree(file);
                var cut = pointer.LastIndexOf('/');
                var (holder, name) = (DataFiles.At(tree, pointer[..cut]), pointer[(cut + 1)..]);
                if (holder is JsonArray list)
                    list[int.Parse(name, System.Globalization.CultureInfo.InvariantCulture)] = JsonNode.Parse(json);
                else
                    holder[name] = JsonNode.Parse(json);
                var spoilt = tree.ToJsonString();
                try
                {
                    DataFiles.ReadWith(file, spoilt);
                }
                catch (KnowledgeException refusal)
                {
                    return refusal.Message.Contains(file, StringComparison.Ordinal) || refusal.Problems.Count > 0;
                }

                return SchemaTests.Accepts(spoilt);
            },
            iter: 150);
    }

    [Theory]
    [InlineData("sorce", "\"sorce\" is not a field here. Use one of: value, unit,")]
    [InlineData("Value", "\"Value\" is not a field here.")]
    public void Read_UnknownField_IsRefusedNotDropped(string field, string message)
    {
        var refusal = DataFiles.RefusalOf("judging.json", tree => tree["judging"]!["confidence"]![field] = 1);

        Assert.Contains(refusal.Problems, p => p.Place == "/judging/confidence" && p.Message.Contains(message, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_HabitGivenACitation_IsRefused()
    {
        var refusal = DataFiles.RefusalOf("sampling.json", tree => tree["sampling"]!["timesPerYear"]!["source"] = "Somebody 1999");

        Assert.Contains("sampling.json#/sampling/timesPerYear/source: with that status the text must begin \"common practice, no source\"", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_UnitOfAnotherScale_IsRefused()
    {
        var refusal = DataFiles.RefusalOf("lines.json", tree => tree["policies"]![0]!["rows"]![0]!["act"]!["unit"] = Units.MitesPerRoll);

        Assert.Contains("lines.json#/policies/0/rows/0/act/unit: \"mites/300-bee roll\" does not fit here. Use \"mites/100 bees\".", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PolicyLentToAScaleOfAnotherUnit_IsRefused()
    {
        var refusal = DataFiles.RefusalOf("lines.json", tree => tree["policies"]![0]!["alsoUsedOn"] = new JsonArray("ether-roll-300"));

        Assert.Contains("lines are never converted", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SeveralUnknownNames_AreAllReportedWithTheKnownOnes()
    {
        var refusal = DataFiles.RefusalOf("lines.json", tree =>
        {
            tree["policies"]![0]!["scale"] = "wsh-per-100";
            tree["policies"]![1]!["scale"] = "nothing";
            tree["policies"]![2]!["rows"]![0]!["months"] = new JsonArray(13);
        });

        Assert.Contains("lines.json#/policies/0/scale: there is no scale named \"wsh-per-100\". Use one of: wash-per-100, ", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("lines.json#/policies/1/scale: ", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("lines.json#/policies/2/rows/0/months/0: expected a month from 1 (January) to 12 (December); found 13.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_UnknownDefaultPolicy_IsRefused() =>
        Assert.Contains(
            "judging.json#/judging/defaultPolicy: there is no line policy named \"none\"",
            DataFiles.RefusalOf("judging.json", tree => tree["judging"]!["defaultPolicy"] = "none").Message, StringComparison.Ordinal);

    [Fact]
    public void Read_TwoRowsForOneTime_AreRefused()
    {
        var refusal = DataFiles.RefusalOf("lines.json", tree =>
        {
            var rows = tree["policies"]![0]!["rows"]!.AsArray();
            rows.Add(rows[0]!.DeepClone());
        });

        Assert.Contains("lines.json#/policies/0/rows/1: covers a time and colony class that row 0 covers already", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FirstLineAboveSecond_IsRefused() =>
        Assert.Contains(
            "\"watch\" (4) is above \"act\" (3)",
            DataFiles.RefusalOf("lines.json", tree => tree["policies"]![0]!["rows"]![0]!["watch"]!["value"] = 4).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("sampling.json", "/sampling/timesPerYear", 4.5, "a whole number from 1 to 100,000 is needed here.")]
    [InlineData("sampling.json", "/sampling/coloniesInOneApiary", 11, "a larger apiary cannot need more colonies")]
    [InlineData("sampling.json", "/sampling/shareOfColoniesLow", 6, "the shares must run")]
    [InlineData("calendar.json", "/rules/0/leeway", 2.5, "the leeway is a whole number of days from 0 to 60.")]
    [InlineData("judging.json", "/judging/sureBelow", 0.8, "must be less than sureAbove")]
    [InlineData("judging.json", "/judging/confidence", 95, "a chance given here lies between 0 and 1")]
    [InlineData("jars.json", "/measures/0/logSpread", 1.2, "the log spread of a bee count lies between 0 and 1.")]
    [InlineData("lines.json", "/policies/0/rows/0/watch", -1, "a line is 0 or more.")]
    public void Read_ValueThatCannotBe_IsRefusedWithTheRule(string file, string figure, double value, string message)
    {
        var refusal = DataFiles.RefusalOf(file, tree => DataFiles.At(tree, figure)["value"] = value);

        Assert.Contains(message, refusal.Message, StringComparison.Ordinal);
        Assert.Contains($"{file}#{figure[..figure.LastIndexOf('/')]}", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SameIdTwice_IsRefused() =>
        Assert.Contains(
            "methods.json#/methods/1: a second entry named \"alcohol-wash\"",
            DataFiles.RefusalOf("methods.json", tree => tree["methods"]![1]!["id"] = "alcohol-wash").Message, StringComparison.Ordinal);

    [Fact]
    public void Read_LatitudeBandsWithAGap_AreRefused() =>
        Assert.Contains(
            "Bands must touch without gap or overlap",
            DataFiles.RefusalOf("climates.json", tree => tree["climates"]![1]!["latitudeFrom"] = 25).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_ValueOutsideItsRange_IsRefused() =>
        Assert.Contains(
            "expected low ≤ value ≤ high",
            DataFiles.RefusalOf("sampling.json", tree =>
            {
                tree["sampling"]!["beesPerJar"]!["low"] = 310;
                tree["sampling"]!["beesPerJar"]!["high"] = 320;
            }).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("mites, bees")]
    [InlineData("{\"rules\": [")]
    [InlineData("{\"rules\": [], \"rules\": []}")]
    public void Read_NotJson_NamesTheFile(string content) =>
        Assert.StartsWith(
            "calendar.json is not well-formed JSON: ",
            Assert.Throws<KnowledgeException>(() => DataFiles.ReadWith("calendar.json", content)).Message, StringComparison.Ordinal);
}
