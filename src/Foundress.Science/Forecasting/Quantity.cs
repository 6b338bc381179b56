namespace Foundress.Science.Forecasting;

/// <summary>The places of what is learnt of a colony in its belief; controls follow from <see cref="FirstControl"/>.</summary>
internal static class Quantity
{
    internal const int Start = 0;
    internal const int Reproduction = 1;
    internal const int Inflow = 2;
    internal const int LateInflow = 3;
    internal const int Drones = 4;
    internal const int Adults = 5;
    internal const int Brood = 6;
    internal const int FirstControl = 7;
}
