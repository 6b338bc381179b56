using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Jobs;
using Foundress.Book.Proving;
using Foundress.Book.Proving.Exchange;
using Foundress.Book.Records;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Proving;

public sealed class GrowthJobTests
{
    private readonly ControlScene _scene = new();

    private JobSetting Setting => new(_scene.Book.Ledger, new BroodSeasons(TestBook.Knowledge), CultureInfo.InvariantCulture);

    [Fact]
    public void Run_UseWithJars_AnswersAsTheForecasterDoes()
    {
        var start = new DateOnly(2026, 6, 20);
        foreach (var colony in _scene.Colonies)
            _scene.Book.Jar(colony, start.AddDays(-2), 18);
        var use = _scene.Use("formic-acid-long", start, 14);
        _scene.Book.Write(new ControlEnded(use.Control, start.AddDays(14)));
        foreach (var colony in _scene.Colonies)
            _scene.Book.Jar(colony, start.AddDays(18), 3);

        var answer = GrowthJob.Read(BookJobs.Find("growth").Run(Setting, $"{use.Control}").Last().Output!).Forecast();

        var asked = new GrowthForecaster(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge).Of(_scene.Book.State.Controls[use.Control]);
        Assert.NotNull(asked);
        Assert.Equal(asked, answer);
    }

    [Fact]
    public void Run_UseWithoutJars_AnswersThatNothingCanBeSaid()
    {
        var use = _scene.Use("formic-acid-long", new DateOnly(2026, 6, 20), 14);
        Assert.Null(GrowthJob.Read(BookJobs.Find("growth").Run(Setting, $"{use.Control}").Last().Output!).Forecast());
    }

    [Theory]
    [InlineData("")]
    [InlineData("00000001-0002-0003-0000-000000000000")]
    public void Run_UnknownControl_IsRefusedByName(string id) =>
        Assert.Contains($"'{id}'", Assert.Throws<ArgumentException>(() => BookJobs.Find("growth").Run(Setting, id)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("null")]
    [InlineData("{")]
    public void Read_NotAnAnswer_IsRefused(string json) => Assert.Throws<ArgumentException>(() => GrowthJob.Read(json));
}
