using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>“Sorry, meant upper”, “no, two strokes not three”, “scratch that”, right after an entry: the line corrects that entry or takes it back (or brings back what went out of turn), and says so before it is sent.</summary>
public static class PutRight
{
    /// <summary>Hears a line as what puts right the entry that was said last, or takes it back.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="me">Who says it: nobody puts right in passing what a colleague said.</param>
    /// <param name="text">The line.</param>
    /// <returns>The entry as it was meant, or the one that is taken back; null where the line says anything else.</returns>
    public static HeardLine? Hear(BenchView view, AccountId me, string? text)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (LastTakenBack.Says(text))
        {
            if (LastTakenBack.TurnsBack(text) && view.Log.WithdrawnBy(me) is { } gone)
            {
                return HeardLine.Nothing with { BringsBack = gone, From = text };
            }

            return SeveralTakenBack.Of(text, view.Log, me) is { Count: > 0 } said ? HeardLine.Nothing with { TakesBack = said[0], TakesBackToo = [.. said.Skip(1)], From = text } : null;
        }

        var context = new PhraseContext(view.Log, view.Batch.CrowTarget.Tuning);
        foreach (var last in view.Log.Told.OrderByDescending(fact => fact.Now!.Sequence).TakeWhile(fact => fact.Now!.RecordedBy == me))
        {
            if (EntryPutRight.Of(text, last.Now, context, alone: true) is { } meant)
            {
                return new HeardLine([new HeardEntry(SaidAgain.With(last.Now!, meant).AsSaid(text), [])], null) { Mends = last, From = text };
            }

            // Behind work or a finding a test may stand that was made of it: the place that was meant is none of the test’s.
            if (last.Now is not Test)
            {
                break;
            }
        }

        return null;
    }
}
