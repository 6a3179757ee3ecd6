using System.Collections.Concurrent;

namespace ReedClinic.KillDriver;

/// <summary>What was sent, and what the app said it has.</summary>
public sealed class Ledger
{
    private readonly ConcurrentDictionary<Guid, string> _sent = new();
    private readonly ConcurrentDictionary<Guid, Guid> _acknowledged = new();

    /// <summary>How many entries were acknowledged so far.</summary>
    public int Acknowledged => _acknowledged.Count;

    /// <summary>Every entry that was sent, by its operation.</summary>
    public IReadOnlyDictionary<Guid, string> Sent => _sent;

    /// <summary>The entries that got no answer.</summary>
    public IEnumerable<KeyValuePair<Guid, string>> Unanswered => _sent.Where(entry => !_acknowledged.ContainsKey(entry.Key));

    /// <summary>Notes an entry before it goes out.</summary>
    public void Send(Guid operation, string text) => _sent[operation] = text;

    /// <summary>Notes that the app has said yes, and which entry it made. It must say the same again.</summary>
    public void Acknowledge(Guid operation, Guid entry)
    {
        if (_acknowledged.GetOrAdd(operation, entry) != entry)
        {
            throw new InvalidOperationException($"Operation {operation} was answered with two different entries.");
        }
    }

    /// <summary>Compares with what is stored.</summary>
    public Comparison CompareWith(IReadOnlyCollection<StoredNote> stored)
    {
        var found = stored.Select(row => (row.Operation, row.Entry)).ToHashSet();
        return new Comparison(
            Lost: _acknowledged.Count(yes => !found.Contains((yes.Key, yes.Value))),
            Duplicates: stored.Count - stored.Select(row => row.Text).Distinct().Count(),
            Strangers: stored.Count(row => !_sent.TryGetValue(row.Operation, out var text) || text != row.Text));
    }
}

/// <summary>What a comparison of ledger and database found; all three must be zero.</summary>
/// <param name="Lost">Acknowledged, but not stored.</param>
/// <param name="Duplicates">Stored more than once.</param>
/// <param name="Strangers">Stored, but never sent, or with another text.</param>
public sealed record Comparison(int Lost, int Duplicates, int Strangers)
{
    /// <summary>True when nothing is wrong.</summary>
    public bool Clean => this is { Lost: 0, Duplicates: 0, Strangers: 0 };
}

/// <summary>A note as the database holds it.</summary>
/// <param name="Entry">Its id.</param>
/// <param name="Operation">The operation that made it.</param>
/// <param name="Text">Its words.</param>
public sealed record StoredNote(Guid Entry, Guid Operation, string Text);
