namespace Foundress.Knowledge.Tests;

public sealed class KnowledgeBaseTests
{
    private static readonly KnowledgeBase Knowledge = KnowledgeBase.Load();

    [Fact]
    public void Load_BuiltInFiles_EveryFigureIsFiniteWithUnitAndSource()
    {
        var figures = Knowledge.AllFigures().ToArray();

        Assert.True(figures.Length > 100, $"only {figures.Length} figures were read");
        Assert.All(figures, f =>
        {
            Assert.True(double.IsFinite(f.Figure.Value), f.Path);
            Assert.Contains(f.Figure.Unit, Units.All);
            Assert.False(string.IsNullOrWhiteSpace(f.Figure.Source.Text), f.Path);
        });
    }
}
