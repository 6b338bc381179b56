using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foundress.Accounts;

/// <summary>What a database system does in its own way for accounts.</summary>
internal interface IAccountsBackend : IDisposable
{
    /// <summary>Where the accounts lie, in words that may be shown.</summary>
    string Place { get; }

    /// <summary>A connection of one's own, to be disposed of.</summary>
    AccountsContext Open();

    /// <summary>Makes the tables, or brings them up to date, while no other program does.</summary>
    /// <exception cref="AccountsException">They cannot be used; they have been left as they were.</exception>
    Task PrepareAsync(CancellationToken cancellation);

    /// <summary>Runs work while no other program makes ready.</summary>
    Task AloneInSetupAsync(Func<Task> work, CancellationToken cancellation);

    /// <summary>Begins a transaction beside which no other of its kind runs, in no program.</summary>
    Task<IDbContextTransaction> BeginAloneAsync(AccountsContext context, CancellationToken cancellation);
}
