using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>
/// Putting a letter right that was sent. A correction begins with what was sent, word for word, and is written like a letter;
/// until it is sent, what was sent is what is read. For teachers and owners.
/// </summary>
public sealed class LetterCorrectionBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private readonly LetterChange _change = new(databases, time);

    /// <summary>Begins a correction. Somebody who is second is shown the one that was begun.</summary>
    public Task<Outcome<LetterView>> BeginAsync(Actor actor, BatchCode code, Guid version, OperationId operation, CancellationToken ct)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        return _change.MakeAsync(new(actor, code, operation, "begin-correction", LetterMoment.Sent, version), (db, view, letter) =>
        {
            db.Add(letter.BeginCorrection(LetterPayload.Write(view.Draft), operation, actor.Account, time.GetUtcNow()));
            return [];
        }, ct);
    }

    /// <summary>Keeps what is said of the correction to whoever reads the letter: what was put right. Nothing takes it back.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="before">What was said when it was looked at; when something else stands there now, the answer is what stands.</param>
    /// <param name="whatChanged">What was put right; nothing takes back what was said.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is kept.</param>
    public Task<Outcome<LetterView>> SayAsync(Actor actor, BatchCode code, string? before, string? whatChanged, OperationId operation, CancellationToken ct) =>
        _change.MakeAsync(new(actor, code, operation, "say-what-changed", LetterMoment.Correction), (db, view, letter) =>
        {
            if (letter.WhatChanged != before)
            {
                return Task.FromResult<List<Problem>?>(null);
            }

            var problems = new List<Problem>();
            var words = PlainText.Read(whatChanged, nameof(LetterSending.WhatChanged), LetterSending.LongestWhatChanged, problems);
            if (problems.Count == 0)
            {
                letter.SayWhatChanged(words);
            }

            return Task.FromResult<List<Problem>?>(problems);
        }, ct);

    /// <summary>Drops a correction that was begun: what was sent stands as it was. Its versions stay in the list. That needs nobody's consent.</summary>
    public Task<Outcome<LetterView>> DropAsync(Actor actor, BatchCode code, Guid version, OperationId operation, CancellationToken ct) =>
        _change.MakeAsync(new(actor, code, operation, "drop-correction", LetterMoment.Correction, version, NeedsConsent: false), (db, view, letter) =>
        {
            letter.DropCorrection();
            return [];
        }, ct);

    /// <summary>Sends a correction: from now on it is what is read, and what was sent before stays beside it.</summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="mark">The mark of the letter that was looked at; when it isn't that any more, the answer is what stands.</param>
    /// <param name="whatChanged">The sentence about what was put right, as it was looked at; the same holds for it.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is sent.</param>
    public Task<Outcome<LetterView>> SendAsync(Actor actor, BatchCode code, string mark, string? whatChanged, OperationId operation, CancellationToken ct)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        return _change.MakeAsync(new(actor, code, operation, "send-correction", LetterMoment.Correction), async (db, view, letter) =>
        {
            if (view.Mark != mark || letter.WhatChanged != PlainText.Read(whatChanged, nameof(LetterSending.WhatChanged), LetterSending.LongestWhatChanged, []))
            {
                return null;
            }

            if (view.Gaps.Count > 0)
            {
                return [.. view.Gaps.Select(gap => new Problem(gap.Key, gap.Words))];
            }

            if (letter.WhatChanged is null)
            {
                return [new Problem(nameof(LetterSending.WhatChanged), "Say in a sentence what was put right.")];
            }

            var now = time.GetUtcNow();
            db.AddSent(letter.SendCorrection(LetterPayload.Write(view.Draft), operation, actor.Account, now));
            var id = view.AtBench.Batch.Id;
            var batch = await db.Set<Batch>().AsNoTracking().SingleAsync(row => row.Id == id, ct).ConfigureAwait(false);
            db.Tell(AuditEvent.LetterCorrected, now, actor.Account.Value, batch.Student.Value, id.Value);
            await outbox.PutNewsAsync(db, batch, $"/letters/{code}", ct, operation, corrected: true).ConfigureAwait(false);
            return [];
        }, ct);
    }
}
