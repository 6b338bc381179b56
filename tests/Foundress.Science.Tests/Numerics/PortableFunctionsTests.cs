using CsCheck;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Numerics;

public class PortableFunctionsTests
{
    [Fact]
    public void Log_AnyPositiveNumber_AgreesWithThePlatform() =>
        Gen.Double[-700d, 700d].Select(Math.Exp).Sample(x => Close(Math.Log(x), PortableFunctions.Log(x)));

    [Fact]
    public void Log_NearOne_KeepsItsDigits() =>
        Gen.Double[0.5, 2d].Sample(x => Close(Math.Log(x), PortableFunctions.Log(x)));

    [Fact]
    public void Exp_AnyNumber_AgreesWithThePlatform() =>
        Gen.Double[-744d, 709.7].Sample(x => Close(Math.Exp(x), PortableFunctions.Exp(x)));

    [Theory]
    [InlineData(0d, 1d)]
    [InlineData(-800d, 0d)]
    [InlineData(800d, double.PositiveInfinity)]
    public void Exp_Ends_AreExact(double x, double expected) => Assert.Equal(expected, PortableFunctions.Exp(x));

    [Fact]
    public void Log_One_IsZero() => Assert.Equal(0d, PortableFunctions.Log(1d));

    [Fact]
    public void Log_SmallestNumber_AgreesWithThePlatform() => Assert.Equal(Math.Log(double.Epsilon), PortableFunctions.Log(double.Epsilon), 1e-12);

    [Theory]
    [InlineData(0d)]
    [InlineData(-1d)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Log_NotAPositiveNumber_IsRefused(double x) => Assert.Throws<ArgumentOutOfRangeException>(() => PortableFunctions.Log(x));

    // Two units in the last place: each side may be off by one. Subnormal results have fewer digits.
    private static bool Close(double expected, double actual) =>
        Math.Abs(actual - expected) <= (4.5e-16 * Math.Abs(expected)) + (2d * double.Epsilon);
}
