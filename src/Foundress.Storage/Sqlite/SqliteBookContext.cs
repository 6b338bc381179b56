using Foundress.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Sqlite;

/// <summary>The book in a SQLite file.</summary>
/// <param name="options">The connection and the provider.</param>
public sealed class SqliteBookContext(DbContextOptions<SqliteBookContext> options) : BookContext(options);
