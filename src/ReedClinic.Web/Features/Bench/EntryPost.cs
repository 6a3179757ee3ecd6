using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.Bench;

/// <summary>Saves a form, whichever way it came: over a circuit or as a plain post.</summary>
public sealed class EntryPost(BenchBook bench)
{
    /// <summary>The entry that a form makes of a reed, or what keeps it from being saved.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="form">The form.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    public static Outcome<BenchEntry> Read(Reed reed, EntryForm form, Tuning tuning, CentsRange? crow = null) => form.ToDomain(tuning) switch
    {
        Outcome<BenchEntry>.Done(var entry) when Agreement.Wanted(reed, entry, crow) is { } problem => new Outcome<BenchEntry>.Refused([problem]),
        var made => made,
    };

    /// <summary>The same, also where its kind is the studio’s own: one that was retired meanwhile keeps it from being saved.</summary>
    /// <param name="view">The reed, its log and the catalogue.</param>
    /// <param name="form">The form.</param>
    public static Outcome<BenchEntry> Read(BenchView view, EntryForm form)
    {
        ArgumentNullException.ThrowIfNull(view);
        var made = Read(view.Reed, form, view.Batch.CrowTarget.Tuning, CrowOf(view, form));
        return made is Outcome<BenchEntry>.Done(var entry) ? view.Catalogue.Own.Named(entry, view.Log) : made;
    }

    /// <summary>
    /// Appends, says better or takes back, as the form says. What goes further than the student asked for is refused until it is
    /// said that it was agreed.
    /// </summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="form">The form.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    public Task<Outcome<BenchFact>> SaveAsync(Actor actor, Reed reed, EntryForm form, Tuning tuning, CancellationToken ct, CentsRange? crow = null) =>
        SaveAsync(actor, reed, form, Read(reed, form, tuning, crow), [], ct);

    private async Task<Outcome<BenchFact>> SaveAsync(Actor actor, Reed reed, EntryForm form, Outcome<BenchEntry> read, IReadOnlyList<AdviceId> heeded, CancellationToken ct) =>
        read switch
        {
            Outcome<BenchEntry>.Refused(var problems) => new Outcome<BenchFact>.Refused(problems),
            Outcome<BenchEntry>.Done(Undo) when form is UndoForm { IsOfOne: true, Seen: { } one } =>
                await bench.TakeBackAsync(actor, reed.Id, one, form.Operation, ct).ConfigureAwait(false),
            Outcome<BenchEntry>.Done(Undo) => await bench.UndoAsync(actor, reed.Id, form.Seen, form.Operation, ct).ConfigureAwait(false),
            Outcome<BenchEntry>.Done(var entry) when form.Seen is { } seen =>
                await bench.CorrectAsync(actor, reed.Id, seen, entry, form.Operation, ct).ConfigureAwait(false),
            Outcome<BenchEntry>.Done(var entry) => await bench.RecordAsync(actor, reed.Id, entry, heeded, form.Operation, ct).ConfigureAwait(false),
            _ => new Outcome<BenchFact>.NotFound(),
        };

    /// <summary>Saves a form at the bench, where the log is at hand.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="form">The form.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> SaveAsync(Actor actor, BenchView view, EntryForm form, CancellationToken ct) =>
        SaveAsync(actor, view, form, [], ct);

    /// <summary>The same, with advice that was shown before and is set aside with it.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="form">The form.</param>
    /// <param name="heeded">The advice.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> SaveAsync(Actor actor, BenchView view, EntryForm form, IReadOnlyList<AdviceId> heeded, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        return SaveAsync(actor, view.Reed, form, WithItsWords(view, form, Read(view.Reed, form, view.Batch.CrowTarget.Tuning, CrowOf(view, form))), heeded, ct);
    }

    // What is brought back as it was has the words again that it came from.
    private static Outcome<BenchEntry> WithItsWords(BenchView view, EntryForm form, Outcome<BenchEntry> read) =>
        read is Outcome<BenchEntry>.Done(var entry) && form.Seen is { } seen && view.Log.FactOf(seen) is { Withdrawn: { Said: { } said } gone } && gone.Kind == entry.Kind
        && EntryForm.FieldsOf(gone).SequenceEqual(EntryForm.FieldsOf(entry))
            ? new Outcome<BenchEntry>.Done(entry.AsSaid(said))
            : read;

    // What is said better was done where it stands.
    private static CentsRange? CrowOf(BenchView view, EntryForm form) => SafeChanges.CrowBefore(
        view.Log, view.Batch.CrowTarget, form.Seen is { } seen && view.Log.FactOf(seen) is { } fact ? fact.Sequence : int.MaxValue);
}
