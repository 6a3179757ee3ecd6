using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>Regulation (EU) 2016/679, Article 16: what is wrong can be put right.</summary>
public sealed class NameBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_new_name_stands_wherever_the_old_one_stood(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);

        Assert.Equal("Noa Kestrel", Done(await scene.Book<NameBook>().RenameAsync(student, "  Noa Kestrel ", Operation(), Ct)));
        Assert.Equal("Rosalind", Done(await scene.Book<NameBook>().RenameAsync(guardian, "Rosalind", Operation(), Ct)));

        Assert.Equal("Noa Kestrel", (await scene.Book<SignInBook>().ReadAsync(student, Ct))!.Name);
        Assert.Equal("Noa Kestrel", Assert.Single(await scene.Book<WardBook>().MineAsync(guardian, Ct)).Name);
        Assert.Equal("Rosalind", (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Name);
        var teacher = new Actor(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);
        Assert.Equal("Noa Kestrel", Assert.Single(await scene.Book<StudentBook>().FindAsync(teacher, "noa", Ct)).Name);
        Assert.Empty(await scene.Book<StudentBook>().FindAsync(teacher, "pia", Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_name_is_read_as_at_sign_up_and_its_change_noted_once(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        string?[] odd = [null, " ", "Pia\r\nBcc: all@harbour.example", "Pia\u202Eaip", new string('x', PersonName.MaxLength + 1)];
        foreach (var typed in odd)
        {
            Assert.Equal(
                (nameof(NewAccount.Name), PersonName.ProblemWith(typed)),
                Assert.IsType<Outcome<string>.Refused>(await scene.Book<NameBook>().RenameAsync(student, typed, Operation(), Ct)).Problems.Select(problem => (problem.Field, problem.Message)).Single());
        }

        var operation = Operation();
        Done(await scene.Book<NameBook>().RenameAsync(student, "Noa", operation, Ct));
        Done(await scene.Book<NameBook>().RenameAsync(student, "Noa", Operation(), Ct));
        Assert.Equal("Noa", Done(await scene.Book<NameBook>().RenameAsync(student, "Ada", operation, Ct)));

        await using var context = db.CreateDbContext();
        Assert.Equal(student.Account.Value, (await context.Set<AuditNote>().SingleAsync(note => note.Event == AuditEvent.NameChanged, Ct)).Who);
    }
}
