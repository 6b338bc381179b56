namespace Foundress.Storage.Model;

/// <summary>
/// Lets the writers of one program in by turns, those of one operation always one after the other, so that they wait here
/// and not with a connection in their hands.
/// </summary>
internal sealed class WriterGates : IDisposable
{
    private readonly SemaphoreSlim[] _gates;

    public WriterGates(int count) => _gates = [.. Enumerable.Range(0, count).Select(_ => new SemaphoreSlim(1, 1))];

    /// <summary>Waits for the turn of an operation.</summary>
    /// <returns>Ends the turn when it is disposed of.</returns>
    public async Task<IDisposable> EnterAsync(string operation, CancellationToken cancellation)
    {
        var gate = _gates[(uint)string.GetHashCode(operation, StringComparison.Ordinal) % (uint)_gates.Length];
        await gate.WaitAsync(cancellation);
        return new Turn(gate);
    }

    public void Dispose()
    {
        foreach (var gate in _gates)
            gate.Dispose();
    }

    private sealed class Turn(SemaphoreSlim gate) : IDisposable
    {
        public void Dispose() => gate.Release();
    }
}
