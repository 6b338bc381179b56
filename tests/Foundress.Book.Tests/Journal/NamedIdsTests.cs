using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Journal;

public sealed class NamedIdsTests
{
    [Fact]
    public void Of_SameWords_IsTheSameId() => Assert.Equal(NamedIds.Of("a", "bc"), NamedIds.Of("a", "bc"));

    [Fact]
    public void Of_WordsSplitElsewhere_IsAnotherId() => Assert.NotEqual(NamedIds.Of("a", "bc"), NamedIds.Of("ab", "c"));

    // RFC 9562: version nibble 8, variant bits 10.
    [Fact]
    public void Of_AnyWords_IsAVersionEightUuid()
    {
        var text = NamedIds.Of("jar", "2026-06-01").ToString("D");
        Assert.Equal('8', text[14]);
        Assert.Contains(text[19], "89ab");
    }
}
