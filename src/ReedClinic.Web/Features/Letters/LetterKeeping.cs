using Microsoft.Extensions.Localization;
using ReedClinic.Data.Letters;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What came of the letter's form.</summary>
/// <param name="LeadsTo">Where to go when everything went well; else null.</param>
/// <param name="View">The letter as it stands.</param>
/// <param name="Left">What was typed and isn't kept.</param>
/// <param name="Problems">Why not.</param>
public sealed record LetterTaken(string? LeadsTo, LetterView View, LetterPost Left, ProblemList Problems);

/// <summary>
/// Takes the one form of the letter. Whichever button was pressed, everything that was typed is kept first; what can't be
/// kept stays in the form. A letter that changed by that isn't sent before it was looked at again.
/// </summary>
public sealed class LetterKeeping(
    LetterBook letters, LetterCorrectionBook corrections, LetterBoxBook box, LetterPages pages, LetterMending mending, LetterRewriting rewriting,
    OwnNoteBook notes, IStringLocalizer<LetterText> words, TimeProvider time)
{
    /// <summary>The field that names the part a note goes into.</summary>
    public const string NotePart = "NotePart";

    /// <summary>The button that puts a note in; with a script it never comes here.</summary>
    public const string NotePut = "NotePut";

    /// <summary>Keeps what was typed, and sends the letter where that was asked for and nothing changed.</summary>
    /// <param name="actor">Who presses.</param>
    /// <param name="view">The letter as it stands.</param>
    /// <param name="posted">The form.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<LetterTaken> TakeAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(posted);
        (posted, var noNote) = await PutNoteAsync(actor, view, LetterReasons.IntoTheWords(view, LetterReasons.Meant(posted)), ct).ConfigureAwait(false);
        var code = view.AtBench.Batch.Code;
        var typed = posted.Texts.Count > 0;
        List<Problem> problems = typed ? await KeepWordsAsync(actor, view, posted, ct).ConfigureAwait(false) : [];
        var wordsKept = problems.Count == 0;
        var mended = await mending.MendAsync(actor, view, posted, ct).ConfigureAwait(false);
        problems.AddRange(mended.Problems);
        var unsaid = await KeepWhatChangedAsync(actor, view, posted, ct).ConfigureAwait(false);
        problems.AddRange(unsaid);
        var changed = typed || mended.Settled.Count > 0;
        if (posted.Sends && !changed && problems.Count == 0)
        {
            problems.AddRange(await SendAsync(actor, view, posted, ct).ConfigureAwait(false));
        }

        problems.AddRange(noNote);
        var leadsTo = (string?)null;
        if (problems.Count == 0 && LetterRewriting.Asked(posted) is { } asked)
        {
            (leadsTo, var refused) = await RewriteAsync(actor, view, typed || (mended.Settled.Count > 0 && view.Version == posted.Version), posted, asked, ct).ConfigureAwait(false);
            problems.AddRange(refused);
        }

        if (problems.Count == 0)
        {
            return new(leadsTo ?? Next(view, posted, typed, mended.Settled.Count > 0), view, LetterPost.Nothing, ProblemList.None);
        }

        var now = await letters.ReadAsync(actor, code, ct).ConfigureAwait(false) ?? view;
        return new(null, now, posted.Left(wordsKept, unsaid.Count > 0 ? mended.Settled : mended.Settled.Append("WhatChanged").ToHashSet()), new ProblemList(problems));
    }

    // Without a script a note goes to the end of the part that was chosen.
    private async Task<(LetterPost Posted, Problem[] WhyNot)> PutNoteAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        if (posted[NotePut] is not { } pressed)
        {
            return (posted, []);
        }

        if (view.Draft.Blocks.FirstOrDefault(block => block.Key == posted[NotePart]) is not { } part)
        {
            return (posted, [new Problem(NotePart, words[string.IsNullOrEmpty(posted[NotePart]) ? "NotesChoosePart" : "NotesPartGone"])]);
        }

        var offers = await notes.OfferAsync(actor, view.AtBench.Batch.Code, ct).ConfigureAwait(false);
        var reed = view.Draft.Reeds.FirstOrDefault(known => known.Id == part.Reed)?.Number ?? 0;
        return offers.FirstOrDefault(offer => Guid.TryParse(pressed, out var id) && offer.Id.Value == id) is { } note
            ? (posted.AtTheEndOf(part, note.TextByReed.GetValueOrDefault(reed, note.Text)), [])
            : (posted, [new Problem(NotePart, words["NotesGone"])]);
    }

    // What was typed was kept against the version that was looked at, or filled in while it stood; this goes on from there.
    private async Task<(string? LeadsTo, IReadOnlyList<Problem> Problems)> RewriteAsync(
        Actor actor, LetterView view, bool kept, LetterPost posted, LetterRewritten asked, CancellationToken ct)
    {
        var now = kept ? await letters.ReadAsync(actor, view.AtBench.Batch.Code, ct).ConfigureAwait(false) ?? view : view;
        return await rewriting.RewriteAsync(actor, now, kept ? now.Version : posted.Version, posted, asked, ct).ConfigureAwait(false);
    }

    private static string Next(LetterView view, LetterPost posted, bool typed, bool mended) => (posted.Sends, posted.Looks, typed || mended) switch
    {
        (true, _, true) => Shown(view, "sending"),
        (true, _, false) => $"/batches/{view.Draft.Code}/letter?done=sent",
        (_, true, _) => Shown(view, "looking"),
        _ => $"/batches/{view.Draft.Code}/letter?done={(mended && !typed ? "mended" : "saved")}",
    };

    private static string Shown(LetterView view, string before) => $"/letters/{view.Draft.Code}{(view.IsCorrection ? "/correction" : "")}?before={before}";

    private async Task<List<Problem>> KeepWhatChangedAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        if (!posted.SaysAnew || posted.WhatChanged is not { } said || said.Trim() == (view.WhatChanged ?? ""))
        {
            return [];
        }

        var outcome = view.WhatChanged is { } stands && !posted.ShowedWhatChanged(stands)
            ? new Outcome<LetterView>.Conflict(view)
            : await corrections.SayAsync(actor, view.AtBench.Batch.Code, view.WhatChanged, said, posted.OperationFor("what-changed", said), ct).ConfigureAwait(false);
        return outcome switch
        {
            Outcome<LetterView>.Done => [],
            Outcome<LetterView>.Refused(var refused) => [.. refused],
            Outcome<LetterView>.Conflict({ IsCorrection: false }) => [new Problem("WhatChanged", words["NoCorrection"])],
            Outcome<LetterView>.Conflict({ WhatChanged: { } theirs }) => [new Problem("WhatChanged", words["FilledSince", theirs])],
            Outcome<LetterView>.Conflict => [new Problem("WhatChanged", words["SameMoment"])],
            _ => [new Problem("", words["Gone"])],
        };
    }

    private async Task<List<Problem>> KeepWordsAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct) =>
        await letters.SaveAsync(
            actor, view.AtBench.Batch.Code, posted.Texts, posted.Version, posted.OperationForTexts(), ct).ConfigureAwait(false) switch
        {
            Outcome<LetterView>.Done => [],
            Outcome<LetterView>.Refused(var refused) => [.. refused.Select(problem => problem with { Field = posted.FieldOf(problem.Field) })],
            Outcome<LetterView>.Conflict(var now) => [new Problem(LetterPost.BlockField(posted.FirstClashIn(now.Draft.Blocks)), words.Clash(now, time))],
            _ => [new Problem("", words["Gone"])],
        };

    private async Task<IEnumerable<Problem>> SendAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        if (!posted.ReadThrough)
        {
            return [new Problem("ReadThrough", words["ReadFirst"])];
        }

        var (code, operation) = (view.AtBench.Batch.Code, posted.OperationFor("send", posted.Mark));
        var sent = view.IsCorrection || posted.WhatChanged is not null
            ? corrections.SendAsync(actor, code, posted.Mark, posted.WhatChanged, operation, ct)
            : letters.SendAsync(actor, code, posted.Mark, operation, ct);
        var outcome = await sent.ConfigureAwait(false);
        if (outcome is Outcome<LetterView>.Done && await box.ReadAsync(actor, code, ct).ConfigureAwait(false) is { } letter)
        {
            await pages.OpenAsync(actor, letter, ct).ConfigureAwait(false); // made and kept at once
        }

        return outcome switch
        {
            Outcome<LetterView>.Done => [],
            Outcome<LetterView>.Refused(var refused) => refused.Select(problem =>
                view.Gaps.FirstOrDefault(gap => gap.Key == problem.Field)?.Part is { } part ? problem with { Field = LetterPost.BlockField(part) }
                : LetterSince.IsGap(view, problem.Field) ? problem with { Field = LetterMending.Field("Reason", problem.Field) } : problem),
            Outcome<LetterView>.Conflict => [new Problem("", words["ChangedSince"])],
            _ => [new Problem("", words["Gone"])],
        };
    }
}
