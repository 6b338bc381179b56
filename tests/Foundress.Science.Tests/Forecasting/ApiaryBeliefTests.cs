using Foundress.Science.Forecasting;

namespace Foundress.Science.Tests.Forecasting;

public class ApiaryBeliefTests
{
    private static readonly ColonyHistory Unsampled = PlainForecast.History();

    [Fact]
    public void For_ColonyNeverSampled_BorrowsFromItsNeighbours()
    {
        double nothing = Median(ColonyBelief.Before(Unsampled, PlainForecast.Priors), out double wide);
        double low = Median(Learn(0, 1, 0, 1, 0, 2), out double narrow);
        double high = Median(Learn(40, 55, 31, 62, 44, 38), out _);

        Assert.True(low < nothing / 2d && high > nothing * 2d, $"{low} {nothing} {high}");
        Assert.True(narrow < wide);
    }

    [Fact]
    public void For_ColoniesThatDiffer_StaysWiderThanForColoniesAlike()
    {
        Median(Learn(10, 12, 9, 11, 10, 12), out double alike);
        Median(Learn(0, 60, 2, 35, 1, 24), out double unlike);
        Assert.True(alike < unlike);
    }

    [Fact]
    public void Learn_OneColony_LearnsNothingFromItself()
    {
        ColonyHistory alone = PlainForecast.History(PlainForecast.Jar(30, 60));
        ApiaryBelief belief = ApiaryBelief.Learn([alone], PlainForecast.Priors, [40], new ColonyFilter(200), 1);
        Assert.Equal(
            Median(ColonyBelief.Before(alone, PlainForecast.Priors), out _, alone, 20), Median(belief.For(alone, 0), out _, alone, 20));
    }

    private static ColonyBelief Learn(params int[] mites)
    {
        ColonyHistory[] histories = [.. mites.Select(count => PlainForecast.History(PlainForecast.Jar(30, count))), Unsampled];
        ApiaryBelief belief = ApiaryBelief.Learn(histories, PlainForecast.Priors, [.. histories.Select(_ => 40)], new ColonyFilter(500), 1);
        return belief.For(Unsampled, histories.Length - 1);
    }

    private static double Median(ColonyBelief belief, out double width, ColonyHistory? history = null, int until = 30)
    {
        ColonyFilter filter = new(2000);
        filter.Run(history ?? Unsampled, belief, PlainForecast.Priors, until, 8);
        float[] loads = PlainForecast.Loads(filter, history ?? Unsampled);
        Array.Sort(loads);
        width = Math.Log(loads[1800] / Math.Max(loads[200], 1e-7f));
        return loads[1000];
    }
}
