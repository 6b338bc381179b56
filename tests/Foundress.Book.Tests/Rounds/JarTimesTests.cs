using Foundress.Book.Rounds;

namespace Foundress.Book.Tests.Rounds;

public sealed class JarTimesTests
{
    // The knowledge files' own figures: washes at least 1 min with no settling time found; sugar rests 3 to 5 min.
    [Theory]
    [InlineData("alcohol-wash", 60, 0)]
    [InlineData("detergent-wash", 60, 0)]
    [InlineData("sugar-shake", 60, 240)]
    [InlineData("co2", 0, 0)]
    public void Of_Method_TakesTheFiguresOfItsHandling(string method, int agitation, int settling) =>
        Assert.Equal(new JarTimes(agitation, settling), JarTimes.Of(TestBook.Knowledge.Methods[method]));
}
