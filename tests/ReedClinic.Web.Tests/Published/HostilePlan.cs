using System.Collections.Concurrent;
using MimeKit;
using ReedClinic.Web.Tests.Mailing;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// What a bad mail server does with each mail: takes it, puts it off once or twice, refuses it for ever, or hangs up behind
/// the last byte; and from time to time it falls silent, which is when a test kills the program.
/// </summary>
internal sealed class HostilePlan(int seed)
{
    private readonly Lock _turn = new();
    private readonly Random _chance = new(seed);
    private readonly Dictionary<string, Fate> _temper = [];
    private TaskCompletionSource _silent = new();
    private int _until = -1;

    /// <summary>The mails that were kept although their sender can't know it: these, and no others, may come once more.</summary>
    public ConcurrentDictionary<string, int> Unsaid { get; } = new();

    /// <summary>How often each thing was done.</summary>
    public ConcurrentDictionary<Fate, int> Done { get; } = new();

    /// <summary>Falls silent at the mail after so many more.</summary>
    /// <returns>Done when it has.</returns>
    public Task SilentAfter(int more)
    {
        lock (_turn)
        {
            (_silent, _until) = (new(TaskCreationOptions.RunContinuationsAsynchronously), more);
            return _silent.Task;
        }
    }

    /// <summary>What happens to a mail at its n-th coming.</summary>
    public Fate Of(MimeMessage mail, int attempt)
    {
        lock (_turn)
        {
            var fate = _until-- == 0 ? Silent() : Spoken(mail.MessageId!, attempt);
            if (fate is Fate.TakenButNotSaid or Fate.TakenAndStalled)
            {
                Unsaid.AddOrUpdate(mail.MessageId!, 1, (_, times) => times + 1);
            }

            Done.AddOrUpdate(fate, 1, (_, times) => times + 1);
            return fate;
        }
    }

    private Fate Silent()
    {
        _silent.SetResult();
        return _chance.Next(2) == 0 ? Fate.Stalled : Fate.TakenAndStalled;
    }

    private Fate Spoken(string id, int attempt)
    {
        if (!_temper.TryGetValue(id, out var temper))
        {
            // Each of the tempers comes among the first mails; behind them chance has its way.
            _temper[id] = temper = (_temper.Count < 5 ? _temper.Count : _chance.Next(10)) switch
            {
                < 2 => Fate.NotNow,
                2 => Fate.Never,
                3 => Fate.TakenButNotSaid,
                _ => Fate.Taken,
            };
        }

        return temper switch
        {
            Fate.NotNow => attempt <= 2 ? Fate.NotNow : Fate.Taken,
            Fate.TakenButNotSaid => attempt == 1 ? Fate.TakenButNotSaid : Fate.Taken,
            _ => temper,
        };
    }
}
