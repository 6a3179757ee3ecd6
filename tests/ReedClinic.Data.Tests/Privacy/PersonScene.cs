using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recurrence;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>A person of whom everything is kept that can be, with a marker in every field that takes words.</summary>
internal sealed class PersonScene(TestDatabase db)
{
    private readonly GuardianScene _people = new(db);

    public GuardianScene People => _people;

    /// <summary>A younger student with a guardian, a batch from intake to home, a draft, a note of the staff, and a sign-in with everything.</summary>
    public async Task<(Actor Student, Actor Guardian)> FullAsync(string mark, string mailMark)
    {
        var student = await StudentAsync(mark, mailMark);
        var guardian = await _people.AgreedAsync(student, $"{mark} guardian");
        var draft = await _people.Intake.DraftAsync(student, Form(mark));
        var batch = Done(await _people.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct)).Batch;
        await _people.Intake.DraftAsync(student, Form(mark));
        await RecordAsync(student, batch, mark);
        await ArriveAsync(batch, mark);
        await WorkAsync(batch, mark);
        await WriteAsync(batch, mark);
        Done(await _people.Book<StaffNoteBook>().WriteAsync(Teacher, student.Student!.Value, $"{mark} staff note", Guid.Empty, Operation(), Ct));
        Done(await _people.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        await SignInsAsync(student.Account, mark);
        return (student with { IsFresh = true }, guardian);
    }

    private async Task<Actor> StudentAsync(string mark, string mailMark)
    {
        var accounts = _people.Book<AccountBook>();
        var made = Done(await _people.Book<AccountRegister>().AdmitAsync(
            new NewAccount($"{mark} Kestrel", $"{mailMark}@harbour.example", GuardianScene.Password) { Age = AgeAnswer.Younger }, Role.Student, Operation(), Ct));
        return (await accounts.ActorFor(made, Ct))!;
    }

    private static IntakeForm Form(string mark) => new()
    {
        TunesTo = "442",
        Country = $"{mark} land",
        Questions = $"{mark} question?",
        Reeds =
        [
            .. Enumerable.Range(1, 2).Select(number => new ReedForm
            {
                HowToRecognise = FormattableString.Invariant($"{mark} thread {number}"),
                Bothers = $"{mark} bothers",
                Permission = "TakeRisks",
                TiedBy = $"{mark} tier",
                LastTried = $"{mark} tried",
                Likes = $"{mark} likes",
            }),
        ],
    };

    // What the student gave, what goes home, and one that is on its way.
    private async Task RecordAsync(Actor student, Batch batch, string mark)
    {
        var recordings = new RecordingScene(db);
        await recordings.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, SoundFiles.Mp3(), words: $"{mark} heard");
        await recordings.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.FinalPhoto, PictureFiles.Png(), words: $"{mark} seen");
        await recordings.PutAsync(Teacher, batch.Reeds[1].Id, RecordingKind.VoiceMemo, SoundFiles.Opus(), words: $"{mark} said");
    }

    private async Task ArriveAsync(Batch batch, string mark)
    {
        var seen = batch.Reeds.ToDictionary(
            reed => reed.Id,
            reed => new ReedArrival(Presence.Here, $"{mark} mark", WindingHand.Right, Overlap.UpperToTheLeft, true, $"{mark} damage", Fitness.Fit));
        Done(await _people.Book<ArrivalBook>().RecordAsync(Teacher, batch.Id, new SeenParcel(seen, $"{mark} parcel"), batch.Version, Operation(), Ct));
    }

    private async Task WorkAsync(Batch batch, string mark)
    {
        var bench = _people.Book<BenchBook>();
        Done(await bench.RecordAsync(Teacher, batch.Reeds[0].Id, Done(Note.Of($"{mark} note")), Operation(), Ct));
        Assert.True(await _people.Book<BenchDraftBook>().KeepAsync(Teacher, batch.Reeds[1].Id, $"{mark} half typed", Ct));
        Done(await _people.Book<CommonThreadBook>().ChooseAsync(
            Teacher, batch.Code, new ThreadChoice(LessonWords: $"{mark} lesson", StrengthWords: $"{mark} strength", HabitWords: $"{mark} habit"), Guid.Empty, Operation(), Ct));
    }

    private async Task WriteAsync(Batch batch, string mark)
    {
        var letters = _people.Book<LetterBook>();
        var view = Done(await letters.AnswerAsync(Teacher, batch.Code, batch.Questions[0].Id, $"{mark} answer", Operation(), Ct));
        foreach (var gap in view.Gaps)
        {
            view = Done(await letters.WaiveAsync(Teacher, batch.Code, gap.Key, $"{mark} reason", Operation(), Ct));
        }

        var sent = Done(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct));
        var corrections = _people.Book<LetterCorrectionBook>();
        Done(await corrections.BeginAsync(Teacher, batch.Code, sent.Version, Operation(), Ct));
        Done(await corrections.SayAsync(Teacher, batch.Code, null, $"{mark} put right", Operation(), Ct));
        Done(await corrections.SendAsync(Teacher, batch.Code, sent.Mark, $"{mark} put right", Operation(), Ct));
        Done(await _people.Book<LetterLinkBook>().MakeAsync(Teacher, batch.Code, LetterLink.UsualDays, Operation(), Ct));
    }

    private async Task SignInsAsync(AccountId account, string mark)
    {
        await _people.Book<SessionRegister>().BeginAsync(account, SignInWay.Password, $"{mark} browser", null, Ct);
        await using var context = db.CreateDbContext();
        context.Add(new RecoveryCode { Hash = Convert.ToHexStringLower(account.Value.ToByteArray()), Account = account, MadeAt = TimeProvider.System.GetUtcNow() });
        context.Add(new IdentityUserPasskey<Guid>
        {
            UserId = account.Value,
            CredentialId = account.Value.ToByteArray(),
            Data = new IdentityPasskeyData { Name = $"{mark} key", PublicKey = [1], AttestationObject = [1], ClientDataJson = [1], CreatedAt = TimeProvider.System.GetUtcNow() },
        });
        await context.SaveChangesAsync(Ct);
    }
}
