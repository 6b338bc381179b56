using Foundress.Web.Store;

namespace Foundress.Web.Shell;

/// <summary>What a page is keeping at the moment: a second tap before the first is on the disk must not keep it twice.</summary>
public sealed class Keeping
{
    private readonly HashSet<object> _underWay = [];

    /// <summary>Whether it is being kept.</summary>
    public bool Has(object what) => _underWay.Contains(what);

    /// <summary>Keeps something, unless that is under way.</summary>
    /// <param name="what">What is kept; equal for two taps on the same.</param>
    /// <param name="write">Writes it down, and does what follows.</param>
    /// <returns>Why the device could not keep it; null when it did, or is about to.</returns>
    public async Task<string?> OnceAsync(object what, Func<Task> write)
    {
        if (!_underWay.Add(what))
            return null;
        try
        {
            await write();
            return null;
        }
        catch (StoreException error)
        {
            return error.Message;
        }
        finally
        {
            _underWay.Remove(what);
        }
    }
}
