namespace Foundress.Science.Estimation;

/// <summary>The ratio of the mean levels of an apiary in two rounds, each a mixture of gamma distributions.</summary>
internal sealed class ApiaryChange(ApiaryPosterior earlier, ApiaryPosterior later, double days) : LevelChange(days)
{
    private protected override double Guess { get; } = Math.Log(later.MedianOfMean.PerBee / earlier.MedianOfMean.PerBee);

    private protected override double Upper(double multiple) => later.Average.UpperOfRatio(earlier.Average, multiple);
}
