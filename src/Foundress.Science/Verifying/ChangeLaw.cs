using Foundress.Science.Estimation;

namespace Foundress.Science.Verifying;

/// <summary>One colony: the ratio of two gamma posteriors.</summary>
internal sealed class ChangeLaw(LevelChange change) : IRatioLaw
{
    public double Quantile(double p) => change.RatioQuantile(p);

    public double Below(double ratio) => change.ChanceRatioOver(ratio).Complement.Value;
}
