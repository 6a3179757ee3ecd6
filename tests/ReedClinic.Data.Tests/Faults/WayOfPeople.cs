using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>An owner invites, a student asks their guardian, who agrees; somebody is let teach; and in the end the student is erased.</summary>
internal sealed class WayOfPeople : WholeWay
{
    private const string GuardianAddress = "rosa@harbour.example";
    private const string TeacherAddress = "edvard@harbour.example";
    private const string GuardianPassword = "nine gulls over the pier";

    private readonly GuardianScene _scene;
    private readonly TestDatabase _db;
    private Actor _owner = new(default, null, false, true);
    private Actor _student = new(default, null, false, false);
    private readonly Actor _other = new(new AccountId(NewId()), null, false, false);
    private AccountId _teacher;
    private string? _secret;

    public WayOfPeople(TestDatabase db)
    {
        (_db, _scene) = (db, new GuardianScene(db));
        Join();
        Guard();
        Leave();
    }

    public override async Task PrepareAsync()
    {
        var owner = Done(await _scene.Book<AccountRegister>().AdmitAsync(new NewAccount("Maud Tern", "maud@harbour.example", GuardianScene.Password), Role.Owner, Operation(), Ct));
        _owner = (await _scene.Book<AccountBook>().ActorFor(owner, Ct))! with { IsFresh = true };
        var student = Done(await _scene.Book<AccountRegister>().AdmitAsync(
            new NewAccount("Pia Kestrel", "pia@harbour.example", GuardianScene.Password) { Age = AgeAnswer.Younger }, Role.Student, Operation(), Ct));
        _student = (await _scene.Book<AccountBook>().ActorFor(student, Ct))!;
        MakeKeys(_db);
    }

    private void Join()
    {
        Add("invite a teacher", operation => _scene.Book<InvitationBook>().InviteAsync(_owner, Role.Teacher, TeacherAddress, byHand: true, operation, Ct));
        Add(
            "join by the link",
            operation => _scene.Book<AccountBook>().JoinAsync(KnownSecret.Secret, new NewAccount("Edvard Lind", null, GuardianPassword), operation, Ct),
            account => _teacher = account,
            KnowSecretAsync);
        Add("end teaching", operation => _scene.Book<PeopleBook>().SetTeacherAsync(_owner, _teacher, teaches: false, operation, Ct));
        Add("let teach", operation => _scene.Book<PeopleBook>().SetTeacherAsync(_owner, _teacher, teaches: true, operation, Ct));
    }

    private void Guard()
    {
        Add("be welcomed", operation => _scene.Intake.Students.WelcomeAsync(_other, "Tove Lind", null, operation, Ct));
        Add("say the age", operation => _scene.Intake.Students.SayAgeAsync(_other, AgeAnswer.OldEnough, operation, Ct));
        Add("ask a guardian", operation => _scene.Book<GuardianBook>().AskAsync(_student, "Rosa Kestrel", GuardianAddress, operation, Ct));
        Add(
            "agree as a guardian",
            operation => _scene.Book<GuardianBook>().AgreeNewAsync(_secret, "Rosa Kestrel", GuardianPassword, operation, Ct),
            look: async () => _secret = await _scene.SecretForAsync(GuardianAddress));
        Add("write a note of the staff", operation => _scene.Book<StaffNoteBook>().WriteAsync(_owner, There(_student.Student), "plays in the harbour band", Guid.Empty, operation, Ct));
    }

    private void Leave()
    {
        Add("close an account", operation => _scene.Book<PeopleBook>().DisableAsync(_owner, _teacher, operation, Ct));
        Add("open it again", operation => _scene.Book<PeopleBook>().EnableAsync(_owner, _teacher, operation, Ct));
        Add("erase a student", operation => _scene.Book<PrivacyBook>().EraseAsync(_owner, _student.Student, PrivacyBook.Confirmation, operation, Ct));
    }

    // A link that is handed over tells its secret once, and may have been lost with the answer.
    private async Task KnowSecretAsync()
    {
        await using var context = _db.CreateDbContext();
        await context.Set<Ticket>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.SecretHash, KnownSecret.Hash), Ct);
    }
}
