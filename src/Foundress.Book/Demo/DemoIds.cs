using System.Globalization;
using Foundress.Book.Journal;

namespace Foundress.Book.Demo;

/// <summary>Identifiers of invented records: the same for the same seed.</summary>
internal sealed class DemoIds(ulong seed) : IIdSource
{
    private int _made;

    public Guid Next() => NamedIds.Of("demo", seed.ToString(CultureInfo.InvariantCulture), (++_made).ToString(CultureInfo.InvariantCulture));
}
