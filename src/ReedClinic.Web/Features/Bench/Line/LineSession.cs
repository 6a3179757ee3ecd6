using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>One teacher at the bench line of one reed: what is typed and how it was understood, their picks, and the reeds beside it.</summary>
public sealed class LineSession(BenchBook bench, TimeProvider time)
{
    private AccountId? me;

    /// <summary>What stands in the line.</summary>
    public string Typed { get; private set; } = "";

    /// <summary>What it comes to.</summary>
    public HeardLine Heard { get; private set; } = HeardLine.Nothing;

    /// <summary>The entry that is being said better in the line; null while something new is said.</summary>
    public Instead? Instead { get; private set; }

    /// <summary>What this teacher does and tries most, as it stood when they sat down: a number means the same from reed to reed.</summary>
    public PickList Picks { get; private set; } = PickList.Start;

    /// <summary>Every reed of the batch and where it stands.</summary>
    public IReadOnlyList<ReedOnStrip> Strip { get; private set; } = [];

    /// <summary>Opens the line on a reed.</summary>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task OpenAsync(Actor actor, BenchView view, CancellationToken ct)
    {
        Picks = await bench.HabitsAsync(actor, ct) is { } mine ? PickList.AtTheBench(mine.Habits, time.GetUtcNow()) : PickList.Start;
        await FollowAsync(actor, view, ct);
    }

    /// <summary>Takes the log as it is now.</summary>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task FollowAsync(Actor actor, BenchView view, CancellationToken ct)
    {
        me = actor.Account;
        Strip = (await bench.StripAsync(actor, view.Batch.Id, ct))?.Reeds ?? [];
        Hear(Typed, view);
    }

    /// <summary>Hears a line as it is being typed.</summary>
    /// <param name="text">What stands in it.</param>
    /// <param name="view">The reed and its log.</param>
    public void Hear(string text, BenchView view)
    {
        Typed = text;
        Heard = Instead is { } taken && view.Log.FactOf(taken.Seen) is { } fact
            ? Instead.Hear(view, fact, text)
            : me is { } said && PutRight.Hear(view, said, text) is { } right ? right : HeardLine.Of(text, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue.Own);
    }

    /// <summary>Takes an entry up, to be said better in the line.</summary>
    /// <param name="taken">The entry, or null to leave it as it stands.</param>
    /// <param name="view">The reed and its log.</param>
    public void TakeUp(Instead? taken, BenchView view)
    {
        Instead = taken;
        Hear(taken?.Words ?? "", view);
    }
}
