using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>An answer that says an entry better at one press.</summary>
/// <param name="Words">What is pressed.</param>
/// <param name="Say">What it sends.</param>
public sealed record AskedAnswer(string Words, string Say);

/// <summary>
/// What is asked in the place of the picks after something was said that leaves a question: why the work stops, or which part of the back.
/// It stands already, and may stay as it is.
/// </summary>
/// <param name="About">The entry that it is about.</param>
/// <param name="Question">The question.</param>
/// <param name="Answers">The usual answers.</param>
public sealed record AskedNext(BenchFact About, string Question, IReadOnlyList<AskedAnswer> Answers)
{
    private const string AllOfTheBack = "open-windows";

    private static readonly string[] PartsOfTheBack = ["open-windows", "scrape-lay-base", "thin-spine", "thin-rails"];

    /// <summary>What is asked about what was said last; null when that leaves no question.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="me">Who is at the bench: nobody is asked about what a colleague said.</param>
    /// <param name="since">The place in the log after which it was said: what stood there before is asked about no more.</param>
    /// <param name="t">The words.</param>
    public static AskedNext? Of(BenchView view, AccountId me, int since, IStringLocalizer<BenchText> t)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(t);
        if (view.Log.LastOf(me) is not { Now: { } now } fact || now.Sequence <= since || view.Log.Told.Any(other => other.Now!.Sequence > now.Sequence))
        {
            return null;
        }

        return now switch
        {
            Stopped { Words: null } => new(fact, t["WhyStopAsked"], [.. Reasons(t).Select(why => Answer(fact, why, EntryKind.Stopped, (nameof(Stopped.Words), why)))]),
            Verdict { Words: null } verdict when !view.Log.IsStopped || view.Log.Stop?.Now.Words is null => new(
                fact, t["WhyVerdictAsked"],
                [.. Reasons(t).Select(why => Answer(fact, why, EntryKind.Verdict, (nameof(Verdict.VerdictKind), verdict.VerdictKind.ToString()), (nameof(Verdict.Words), why)))]),
            Adjustment work when !IsAnswered(fact, work) && IsAllOfTheBack(work, view) => new(fact, t["WhichOfBackAsked"], [.. Parts(fact, work)]),
            _ => null,
        };
    }

    // What makes teachers stop is common practice; the sentences are this program's own, and a letter tells them to the student.
    private static IEnumerable<string> Reasons(IStringLocalizer<BenchText> t) => Enumerable.Range(1, 8).Select(number => t[$"WhyStop{number}"].Value);

    // The words stay with the answer, also where it is what was understood at first: said in the same words before, it has been asked.
    private static bool IsAnswered(BenchFact fact, Adjustment work) =>
        fact.Chain.Any(said => said != fact.Now && said is Adjustment before && Agreement.Without(before.Words) == Agreement.Without(work.Words));

    // The trade has no name for work over all of the back: the reader takes it for its windows, says so, and keeps the words.
    private static bool IsAllOfTheBack(Adjustment work, BenchView view) =>
        work is { AdjustmentKind.Value: AllOfTheBack, Zone: Zone.Windows, Words: { } words }
        && PhraseReader.Read(Agreement.Without(words) ?? "", new PhraseContext(view.Log, view.Batch.CrowTarget.Tuning)).Entries is [{ Slots.Kind: AllOfTheBack, Doubts.Count: > 0 }];

    private static IEnumerable<AskedAnswer> Parts(BenchFact fact, Adjustment work) =>
        from part in PartsOfTheBack
        let kind = AdjustmentCatalogue.Find(new AdjustmentKindId(part))!
        select new AskedAnswer(kind.Done, SayButton.Of(work, fact.Tail, kind));

    private static AskedAnswer Answer(BenchFact fact, string words, EntryKind kind, params IEnumerable<(string Name, string? Value)> fields) =>
        new(words, SayButton.Of(kind, fields.Append(("Seen", fact.Tail.Value.ToString()))));
}
