using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>
/// Tells whoever has a reed open that something was written in its log. It carries no content and promises nothing: who is told
/// reads the log anew, by sequence, and who was not told finds out at the next slow look.
/// </summary>
public sealed class BenchNews
{
    private readonly Lock _gate = new();
    private readonly Dictionary<ReedId, List<Action>> _listeners = [];
    private int _judged;

    /// <summary>Another number each time that a word on a cause was said or taken back in any log, as far as this process was told.</summary>
    public int Judged => Volatile.Read(ref _judged);

    /// <summary>Listens for one reed until what is given back is disposed of.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="told">Called on the writer's thread after the entry is saved: it must be quick and must not throw.</param>
    public IDisposable Listen(ReedId reed, Action told)
    {
        lock (_gate)
        {
            if (!_listeners.TryGetValue(reed, out var list))
            {
                _listeners[reed] = list = [];
            }

            list.Add(told);
        }

        return new Listening(this, reed, told);
    }

    /// <summary>Whoever carries news to the studio's other processes hears here of what was written in this one.</summary>
    public event Action<ReedId>? Told;

    /// <summary>Whoever carries news hears here that the counts of causes began anew, in this process.</summary>
    public event Action? CountsBegan;

    /// <summary>Whoever carries news hears here that a word on a cause was said or taken back, in this process.</summary>
    public event Action? CauseJudged;

    /// <summary>The counts of causes began anew, by this process: what every open reed shows may be otherwise.</summary>
    public void TellCountsBegan()
    {
        TellAll();
        CountsBegan?.Invoke();
    }

    /// <summary>Something was saved in a reed's log, by this process.</summary>
    /// <param name="reed">The reed.</param>
    public void Tell(ReedId reed)
    {
        TellHere(reed);
        Told?.Invoke(reed);
    }

    /// <summary>A word on a cause was said or taken back, by this process. It is told before what was written is, since who hears that asks for the counts.</summary>
    public void TellJudged()
    {
        TellJudgedHere();
        CauseJudged?.Invoke();
    }

    /// <summary>A word on a cause was said or taken back: this process alone is told.</summary>
    public void TellJudgedHere() => Interlocked.Increment(ref _judged);

    /// <summary>Everybody of this process may have missed something.</summary>
    public void TellAll()
    {
        TellJudgedHere();
        ReedId[] open;
        lock (_gate)
        {
            open = [.. _listeners.Keys];
        }

        foreach (var reed in open)
        {
            TellHere(reed);
        }
    }

    /// <summary>Tells those of this process alone.</summary>
    /// <param name="reed">The reed.</param>
    public void TellHere(ReedId reed)
    {
        Action[] listeners;
        lock (_gate)
        {
            listeners = _listeners.TryGetValue(reed, out var list) ? [.. list] : [];
        }

        foreach (var told in listeners)
        {
            told();
        }
    }

    private void Leave(ReedId reed, Action told)
    {
        lock (_gate)
        {
            if (_listeners.TryGetValue(reed, out var list) && list.Remove(told) && list.Count == 0)
            {
                _listeners.Remove(reed);
            }
        }
    }

    private sealed class Listening(BenchNews news, ReedId reed, Action told) : IDisposable
    {
        private int _left;

        public void Dispose()
        {
            if (Interlocked.Exchange(ref _left, 1) == 0)
            {
                news.Leave(reed, told);
            }
        }
    }
}
