using CsCheck;
using Foundress.Reports.Drawing;

namespace Foundress.Reports.Tests.Drawing;

public sealed class SpreadTests
{
    [Fact]
    public void Apart_ThreeAtOnePlace_StandAroundIt()
    {
        double[] places = [50, 50, 50];
        Spread.Apart(places, [4, 4, 4], 0, 100);
        Assert.Equal([46d, 50d, 54d], places);
    }

    [Fact]
    public void Apart_RoomEnough_MovesNothing()
    {
        double[] places = [10, 20, 30];
        Spread.Apart(places, [4, 4, 4], 0, 100);
        Assert.Equal([10d, 20d, 30d], places);
    }

    [Fact]
    public void Apart_AnyPlaces_KeepsOrderGapsAndEnds() => Gen.Double[0, 100].Array[0, 40].Sample(wanted =>
    {
        Array.Sort(wanted);
        var gaps = Enumerable.Repeat(5d, wanted.Length).ToArray();
        Spread.Apart(wanted, gaps, 0, 100);
        var least = wanted.Length > 21 ? 100d / (wanted.Length - 1) : 5d;
        for (var i = 0; i < wanted.Length; i++)
        {
            Assert.InRange(wanted[i], -1e-9, 100 + 1e-9);
            if (i > 0)
                Assert.True(wanted[i] - wanted[i - 1] >= least - 1e-9);
        }
    });
}
