namespace Foundress.Storage.Tests;

/// <summary>Which database system a test runs on.</summary>
public enum DatabaseKind
{
    Sqlite,
    Postgres,
}
