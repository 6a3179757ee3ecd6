using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Privacy;

/// <summary>Which rows are one person's, area by area: what is copied for them is selected here.</summary>
internal static class PersonRows
{
    /// <summary>The area with the guardian whom a student named; a guardian's own answers for others stand under their own name.</summary>
    public const string NamedGuardian = "NamedGuardian";

    /// <summary>What is kept of somebody who sends reeds, by the entity's name.</summary>
    /// <param name="db">The records.</param>
    /// <param name="id">Of whom.</param>
    /// <param name="own">True for the student's own copy. What a student has begun to write and not sent is theirs alone.</param>
    public static IReadOnlyList<(string Area, IQueryable<object> Rows)> OfStudent(ClinicDb db, StudentId id, bool own)
    {
        var batches = db.Set<Batch>().Where(batch => batch.Student == id);
        var reeds = db.Set<Reed>().Where(reed => batches.Any(batch => batch.Id == reed.Batch));
        var heard = db.RecordingsOf(batches);
        return
        [
            (nameof(Student), db.Set<Student>().Where(student => student.Id == id)),
            (nameof(Batch), batches.OrderBy(batch => batch.SubmittedAt)),
            (nameof(Reed), reeds.OrderBy(reed => reed.Batch).ThenBy(reed => reed.Number)),
            (nameof(Question), db.Set<Question>().Where(question => batches.Any(batch => batch.Id == question.Batch)).OrderBy(question => question.Batch).ThenBy(question => question.Number)),
            (nameof(BenchEntry), db.Set<BenchEntry>().Where(entry => reeds.Any(reed => reed.Id == entry.ReedId)).OrderBy(entry => entry.ReedId).ThenBy(entry => entry.Sequence)),
            (nameof(Recording), heard.OrderBy(recording => recording.RecordedAt)),
            (nameof(SoundReading), db.Set<SoundReading>().Where(reading => heard.Any(recording => recording.Id == reading.Recording)).OrderBy(reading => reading.AskedAt)),
            (nameof(CommonThread), db.Set<CommonThread>().Where(thread => batches.Any(batch => batch.Id == thread.BatchId))),
            (nameof(Letter), db.Set<Letter>().Where(letter => letter.SentAt != null && batches.Any(batch => batch.Id == letter.Batch))),
            (nameof(LetterSending), db.Set<LetterSending>().Where(sending => batches.Any(batch => batch.Id == sending.Batch)).OrderBy(sending => sending.Batch).ThenBy(sending => sending.Ordinal)),
            (nameof(LetterLink), db.Set<LetterLink>().Where(link => batches.Any(batch => batch.Id == link.Batch)).OrderBy(link => link.MadeAt)),
            .. own ? OfStudentAlone(db, id) : [],
        ];
    }

    private static IReadOnlyList<(string Area, IQueryable<object> Rows)> OfStudentAlone(ClinicDb db, StudentId id) =>
    [
        (nameof(IntakeDraft), db.Set<IntakeDraft>().Where(draft => draft.Student == id && draft.BecameBatch == null)),
        (NamedGuardian, db.Set<Guardianship>().Where(guardian => guardian.Student == id)),
    ];

    /// <summary>What is kept of a sign-in, and of its holder as a guardian.</summary>
    public static IReadOnlyList<(string Area, IQueryable<object> Rows)> OfAccount(ClinicDb db, AccountId id) =>
    [
        (nameof(ClinicAccount), db.Users.Where(account => account.Id == id.Value)),
        (nameof(Session), db.Set<Session>().Where(session => session.Account == id)),
        (nameof(RecoveryCode), db.Set<RecoveryCode>().Where(code => code.Account == id)),
        (nameof(IdentityPasskeyData), db.Set<IdentityUserPasskey<Guid>>().Where(passkey => passkey.UserId == id.Value)),
        (nameof(Ticket), db.Set<Ticket>().Where(ticket => ticket.Account == id)),
        (nameof(Guardianship), db.Set<Guardianship>().Where(guardian => guardian.Account == id)),
    ];
}
