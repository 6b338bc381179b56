using System.Globalization;
using System.Text.Json;
using Foundress.Book.Forecasts;
using Foundress.Book.Jobs;
using Foundress.Book.Planning.Exchange;

namespace Foundress.Book.Tests.Planning.Exchange;

public sealed class PlanJobTests
{
    private readonly JulyApiary _scene = new();

    private JobSetting Setting => new(_scene.Book.Ledger, new BroodSeasons(TestBook.Knowledge), CultureInfo.InvariantCulture);

    [Fact]
    public void Run_Request_GivesThePlansTheSearchGives()
    {
        var steps = BookJobs.Find(PlanJob.Called).Run(Setting, PlanJson.Write(new PlanRequest(_scene.Id, JulyApiary.Today, JulyApiary.Quick))).ToList();
        var plans = PlanJson.ReadPlans(steps[^1].Output!);
        var expected = _scene.Plans();
        Assert.Equal(JsonSerializer.Serialize(expected with { Choices = [] }), JsonSerializer.Serialize(plans with { Choices = [] }));
        Assert.Equal(expected.Choices.Select(choice => choice.Sentence), plans.Choices.Select(choice => choice.Sentence));
        Assert.Equal(expected.Choices.SelectMany(choice => choice.Virtues), plans.Choices.SelectMany(choice => choice.Virtues));
        Assert.Equal(expected.Choices[1].Fan[3].Middle, plans.Choices[1].Fan[3].Middle, 1e-4);
        Assert.All(steps.SkipLast(1), step => Assert.True(step.Output is null && step.Note is { Length: > 0 }));
    }

    [Fact]
    public void ReadRequest_Options_ComeBackAsTheyWere()
    {
        var options = JulyApiary.Quick with { Colonies = [_scene.Colonies[0]], HarvestOn = JulyApiary.Today.AddDays(9), Tolerance = 0.13, Seed = ulong.MaxValue };
        var read = PlanJson.ReadRequest(PlanJson.Write(new PlanRequest(_scene.Id, JulyApiary.Today, options)));
        Assert.Equal(options.Colonies, read.Options.Colonies);
        Assert.Equal(options with { Colonies = null }, read.Options with { Colonies = null });
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("null")]
    [InlineData("{}")]
    public void ReadRequest_NoRequest_IsRefused(string json) =>
        Assert.Contains("no request for plans", Assert.Throws<ArgumentException>(() => PlanJson.ReadRequest(json)).Message, StringComparison.Ordinal);

    [Fact]
    public void Run_ApiaryOfAnotherBook_IsRefused()
    {
        var request = PlanJson.Write(new PlanRequest(new(Guid.Empty), JulyApiary.Today, JulyApiary.Quick));
        Assert.Contains("not in the book", Assert.Throws<ArgumentException>(() => new PlanJob().Run(Setting, request).ToList()).Message, StringComparison.Ordinal);
    }
}
