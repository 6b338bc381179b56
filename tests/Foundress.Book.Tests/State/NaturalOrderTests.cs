using CsCheck;
using Foundress.Book.State;

namespace Foundress.Book.Tests.State;

public sealed class NaturalOrderTests
{
    [Fact]
    public void Compare_HiveNumbers_AreOrderedByValue() =>
        Assert.Equal(
            ["1", "2", "10", "A2", "a10", "B007", "B8"],
            new[] { "10", "B8", "a10", "2", "A2", "B007", "1" }.Order(NaturalOrder.Instance));

    [Fact]
    public void Compare_AnyThreeNames_IsAnOrder()
    {
        var names = Gen.String[Gen.Char["aA09 1"], 0, 6];
        Gen.Select(names, names, names).Sample((a, b, c) =>
        {
            var order = NaturalOrder.Instance;
            Assert.Equal(Math.Sign(order.Compare(a, b)), -Math.Sign(order.Compare(b, a)));
            Assert.Equal(a == b, order.Compare(a, b) == 0);
            if (order.Compare(a, b) <= 0 && order.Compare(b, c) <= 0)
                Assert.True(order.Compare(a, c) <= 0, $"'{a}' '{b}' '{c}'");
        });
    }
}
