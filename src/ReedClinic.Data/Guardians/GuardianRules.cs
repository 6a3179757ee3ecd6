using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>What asking and answering have in common.</summary>
internal static class GuardianRules
{
    /// <summary>What is said when an address was written to often enough for today.</summary>
    public static Problem ToldOften { get; } = new("Email", "You asked this address today already. Please wait until tomorrow, or ask them in person to look for the mail, among unwanted mail too.");

    /// <summary>What is said when whoever has this address said no today.</summary>
    public static Problem SaidNo { get; } = new("Email", "Whoever has this address said no in the last 24 hours. Please give them a day: talk with them if you like, or ask another parent or guardian.");

    /// <summary>What is said to a student who would answer in place of a guardian.</summary>
    public static Problem NotForStudents { get; } = new("", "This question is for a parent or guardian. Please let them sign in, or open the link in their own browser.");

    /// <summary>What hinders a student from asking this guardian now.</summary>
    public static IReadOnlyList<Problem> Check(GuardianView stands, string? name, string? email, IEnumerable<string?> ownAddresses)
    {
        switch (stands)
        {
            case { Age: null }:
                return [new Problem("Age", "Please say first how old you are.")];
            case { Age: AgeAnswer.OldEnough }:
                return [new Problem("", "You are old enough to decide for yourself: nobody has to be asked.")];
            case { Consent: Consent.Given }:
                return [new Problem("", "Your guardian has agreed already.")];
            case { Consent: Consent.Withdrawn }:
                return [new Problem("", "Your guardian has taken their consent back. Only they can give it again, from their own page. If they can’t come in any more, please ask the studio.")];
            case { MayAsk: false }:
                return [new Problem("", $"A guardian was written to {GuardianBook.MostAsksADay} times in the last 24 hours. Please wait until tomorrow, or ask them in person to look for the mail.")];
        }

        var problems = new List<Problem>();
        if (PersonName.Read(name) is null)
        {
            problems.Add(new Problem("Name", $"Write your guardian’s name in 1 to {PersonName.MaxLength} characters, on one line."));
        }

        if (EmailAddress.Read(email) is not { } address)
        {
            problems.Add(new Problem("Email", "Write the e-mail address in full, such as name@example.org."));
        }
        else if (ownAddresses.OfType<string>().Any(own => Folding.OfEmail(own) == Folding.OfEmail(address)))
        {
            problems.Add(new Problem("Email", "This is your own address. Please write your guardian’s."));
        }

        return problems;
    }

    /// <summary>What a mail tells: a guardian agreed.</summary>
    public const string Given = "ConsentGiven";

    /// <summary>What a mail tells: a guardian agrees once more, after having taken it back.</summary>
    public const string GivenAgain = "ConsentGivenAgain";

    /// <summary>What a mail tells: a guardian who was asked said no.</summary>
    public const string Declined = "ConsentDeclined";

    /// <summary>What a mail tells: a guardian took their consent back.</summary>
    public const string Withdrawn = "ConsentWithdrawn";

    /// <summary>By what the mail that asks a guardian is found again while it waits.</summary>
    /// <param name="ticket">The link in it.</param>
    public static string AskedOnce(TicketId ticket) => $"guardian-asked:{ticket.Value}";

    /// <summary>
    /// The guardian’s sign-in is closed: their yes stands no more, because they couldn’t take it back. Their students are told,
    /// and can ask somebody else; links to their letters are closed. A consent that was taken back stays so.
    /// </summary>
    public static async Task CloseAsync(this ClinicDb db, Outbox outbox, AccountId guardian, AccountId by, DateTimeOffset now, CancellationToken ct)
    {
        // Also where nobody has to answer at present, so that no yes of theirs comes back when an age is put right.
        var theirs = await db.Set<Guardianship>().Where(row => row.Account == guardian && row.GivenAt != null && row.WithdrawnAt == null).ToListAsync(ct).ConfigureAwait(false);
        foreach (var row in theirs.OrderBy(row => row.Student.Value))
        {
            if (row.EndedAt is null)
            {
                await db.CloseLinksAsync(row.Student, by, now, ct).ConfigureAwait(false);
            }

            var student = await db.Set<Student>().SingleAsync(person => person.Id == row.Student, ct).ConfigureAwait(false);
            student.Follow(Consent.NotAsked);
            db.Remove(row);
            db.Tell(AuditEvent.ConsentWithdrawn, now, by.Value, student.Id.Value, row.Id.Value);
            if (row.EndedAt is null && student.Email is { } own)
            {
                outbox.Put(db, new Mail(MailKind.GuardianGone, own, student.FirstName) { At = now, Path = "/guardian", About = student.Id.Value });
            }
        }
    }

    /// <summary>Notes that a guardian agrees. No link from before opens by it.</summary>
    public static async Task GiveAsync(this ClinicDb db, Guardianship guardianship, Student student, AccountId account, DateTimeOffset now, CancellationToken ct)
    {
        await db.CloseLinksAsync(student.Id, account, now, ct).ConfigureAwait(false);
        guardianship.Give(account, now);
        student.Follow(Consent.Given);
        db.Tell(AuditEvent.ConsentGiven, now, account.Value, student.Id.Value, guardianship.Id.Value);
    }

    /// <summary>What of a student’s waits for a guardian’s yes.</summary>
    /// <param name="Unsent">Whether something is written and not sent.</param>
    /// <param name="UnderWay">Whether a batch is on its way, or has reeds here that can be worked on.</param>
    /// <param name="KeptApart">How many of the reeds in hand came with mould, and stay as they are.</param>
    public readonly record struct Waiting(bool Unsent, bool UnderWay, int KeptApart);

    /// <summary>The reeds of a student that were unpacked and of which no letter was sent yet.</summary>
    public static IQueryable<Reed> InHand(this ClinicDb db, StudentId student) => db.Set<Reed>().Where(reed => reed.Presence != Presence.Missing
        && db.Set<Batch>().Any(batch => batch.Id == reed.Batch && batch.Student == student && (batch.Stage == Stage.Here || batch.Stage == Stage.AtTheBench)));

    /// <summary>What waits for a yes about this student.</summary>
    public static async Task<Waiting> WaitingAsync(this ClinicDb db, StudentId student, CancellationToken ct) => new(
        await db.Set<IntakeDraft>().AnyAsync(draft => draft.Student == student && draft.BecameBatch == null, ct).ConfigureAwait(false),
        await db.Set<Batch>().AnyAsync(batch => batch.Student == student && batch.Stage == Stage.OnItsWay, ct).ConfigureAwait(false)
            || await db.InHand(student).AnyAsync(reed => reed.Fitness != Fitness.Mould, ct).ConfigureAwait(false),
        await db.InHand(student).CountAsync(reed => reed.Fitness == Fitness.Mould, ct).ConfigureAwait(false));

    /// <summary>
    /// Tells the guardian and the student what was answered, and what each can do next. To a younger student's own address goes
    /// this, and that their records were erased, and nothing else.
    /// </summary>
    public static void PutAnswered(this Outbox outbox, ClinicDb db, Guardianship guardianship, Student student, string what, DateTimeOffset now, Waiting waits = default)
    {
        outbox.Put(db, new Mail(MailKind.GuardianAnswered, guardianship.Email, guardianship.Name) { What = what, Ward = student.FirstName, At = now, Path = "/wards", About = guardianship.Account?.Value ?? student.Id.Value });
        if (student.Email is { } own)
        {
            outbox.Put(db, new Mail(MailKind.GuardianAnswered, own, student.FirstName) { What = what, At = now, Unsent = waits.Unsent, UnderWay = waits.UnderWay, KeptApart = waits.KeptApart, Path = what switch { Given when waits is { UnderWay: true, Unsent: false } => "/batches", Given => "/intake", GivenAgain => "/batches", _ => "/guardian" }, About = student.Id.Value });
        }
    }

    /// <summary>
    /// Tells the student kindly that the guardian who was asked said no, and the guardian that it was noted. Who says no has no
    /// page here: their mail leads nowhere.
    /// </summary>
    public static void PutDeclined(this Outbox outbox, ClinicDb db, Guardianship guardianship, Student student, DateTimeOffset now)
    {
        outbox.Put(db, new Mail(MailKind.GuardianAnswered, guardianship.Email, guardianship.Name) { What = Declined, Ward = student.FirstName, At = now, About = student.Id.Value });
        if (student.Email is { } own)
        {
            outbox.Put(db, new Mail(MailKind.GuardianAnswered, own, student.FirstName) { What = Declined, At = now, Path = "/guardian", About = student.Id.Value });
        }
    }

    /// <summary>
    /// True when whoever has this address said no to this student since then, also when somebody else was asked after that: a
    /// no isn't answered by asking the same again.
    /// </summary>
    public static async Task<bool> SaidNoAsync(this ClinicDb db, StudentId student, string foldedEmail, DateTimeOffset since, CancellationToken ct)
    {
        var asked = await db.Set<Ticket>().Where(ticket => ticket.Purpose == TicketPurpose.Guardian && ticket.Student == student && ticket.FoldedEmail == foldedEmail && ticket.UsedAt != null)
            .Select(ticket => ticket.Id).ToListAsync(ct).ConfigureAwait(false);
        var subjects = asked.ConvertAll(ticket => ticket.Value);
        return await db.Set<DoneOperation>().AnyAsync(done => done.Verb == DeclineBook.Decline && subjects.Contains(done.Subject) && done.DoneAt > since, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Tells the student, and the guardian who has agreed once, that the student's age was put right, if it wasn't so before.
    /// Who said no or never answered has no page here, and is told nothing.
    /// </summary>
    public static void PutAge(this Outbox outbox, ClinicDb db, Student student, Guardianship? guardianship, AgeAnswer right, DateTimeOffset now)
    {
        if (student.Age == right)
        {
            return;
        }

        var kind = right is AgeAnswer.OldEnough ? MailKind.FoundOldEnough : MailKind.FoundYounger;
        if (guardianship is { Account: { } theirs } told)
        {
            outbox.Put(db, new Mail(kind, told.Email, told.Name) { Ward = student.FirstName, At = now, Path = "/wards", About = theirs.Value });
        }

        if (student.Email is { } own)
        {
            outbox.Put(db, new Mail(kind, own, student.FirstName) { At = now, Path = "/guardian", About = student.Id.Value });
        }
    }
}
