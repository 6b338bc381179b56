using System.Text.Json;

namespace Foundress.Cli.Tests;

public sealed class ChooseCommandTests : IDisposable
{
    private const string Jars = """
        apiary,colony,date,method,mites,bees
        Home,1,2026-08-24,alcohol-wash,9,300
        Home,2,2026-08-24,alcohol-wash,6,310
        """;

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Choose_NoSearch_SaysOfEveryControlWhetherAndWhyNot()
    {
        await BookAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("choose", "--apiary", "Home"));
        Assert.Contains("Home, 1 Sep 2026: what the rules say of each control.", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Something must be known first:", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Not known: enter whether supers are on", _scene.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Plans until", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Choose_WhatIsSaidOfTheColonies_AnswersWhatTheBookDoesNotKnow()
    {
        await BookAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("choose", "--apiary", "Home", "--supers-on", "no", "--sealed-brood", "yes", "--clustered", "no"));
        Assert.DoesNotContain("enter whether supers are on", _scene.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("enter whether there is sealed brood", _scene.Out, StringComparison.Ordinal);
        Assert.NotEqual(0, await _scene.RunOnBookAsync("choose", "--apiary", "Home", "--supers-on", "perhaps"));
        Assert.Contains("yes", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Choose_Search_PrintsTheListWithWhyAndWhatWasDropped()
    {
        await BookAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("choose", "--search", "--tolerance", "0.3", "--days", "90"));
        Assert.Contains("Plans until 30 Nov 2026.", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("1. Nothing done", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Shown because: ", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("were worked out", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("The label, local law and licensed practice decide.", _scene.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Choose_Json_IsTheSameTwice()
    {
        await BookAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("choose", "--search", "--colony", "2", "--days", "90", "--json"));
        var first = _scene.Out;
        var plans = _scene.Json().GetProperty("plans");
        Assert.Equal(0.2, plans.GetProperty("tolerance").GetDouble());
        Assert.Equal("nothing", plans.GetProperty("choices")[0].GetProperty("virtues")[0].GetString());
        Assert.All(plans.GetProperty("choices").EnumerateArray(), choice => Assert.Equal("2", Assert.Single(choice.GetProperty("colonies").EnumerateArray()).GetProperty("name").GetString()));
        Assert.Equal(JsonValueKind.Array, _scene.Json().GetProperty("controls").ValueKind);
        Assert.Equal(0, await _scene.RunOnBookAsync("choose", "--search", "--colony", "2", "--days", "90", "--json"));
        Assert.Equal(first, _scene.Out);
    }

    [Theory]
    [InlineData("--tolerance '0.9'", "--tolerance", "0.9")]
    [InlineData("--days '20'", "--days", "20")]
    [InlineData("--colony 'X'", "--colony", "X")]
    [InlineData("--on '2026-08-01'", "--on", "2026-08-01")]
    [InlineData("--harvest 'soon'", "--harvest", "soon")]
    [InlineData("--apiary 'Away'", "--apiary", "Away")]
    public async Task Choose_WrongValue_NamesItAndTheFix(string named, string option, string value)
    {
        await BookAsync();
        Assert.Equal(2, await _scene.RunOnBookAsync("choose", option, value));
        Assert.Contains(named, _scene.Error, StringComparison.Ordinal);
    }

    private async Task BookAsync() => Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Jars)));
}
