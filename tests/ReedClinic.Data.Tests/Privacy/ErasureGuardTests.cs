using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>What erasing leaves alone.</summary>
public sealed class ErasureGuardTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Actor Owner = new(new AccountId(NewId()), null, IsTeacher: false, IsOwner: true) { IsFresh = true };

    [Theory, OnBothEngines]
    public async Task A_student_who_answers_for_another_keeps_the_sign_in_when_their_reeds_are_erased(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (younger, rosa, wim) = (await scene.StudentAsync(), await scene.StudentAsync("Rosa", AgeAnswer.OldEnough), await scene.StudentAsync("Wim", AgeAnswer.OldEnough));
        var email = (await scene.Book<StudentBook>().MeAsync(rosa, Ct))!.Email!;
        Done(await scene.Book<GuardianBook>().AskAsync(younger, "Rosa", email, Operation(), Ct));
        Done(await scene.Book<GuardianBook>().AgreeAsync(rosa, await scene.SecretForAsync(email), Operation(), Ct));

        foreach (var student in new[] { rosa, wim })
        {
            Done(await scene.Book<PrivacyBook>().EraseAsync(Owner, student.Student, "erase", Operation(), Ct));
        }

        await using var context = db.CreateDbContext();
        Assert.True(await context.Users.AnyAsync(user => user.Id == rosa.Account.Value, Ct));
        Assert.False(await context.Users.AnyAsync(user => user.Id == wim.Account.Value, Ct));
        Assert.Equal([younger.Student!.Value], (await scene.Book<AccountBook>().ActorFor(rosa.Account, Ct))!.Wards);
    }

    [Theory, OnBothEngines]
    public async Task Recovery_codes_go_with_their_account_and_the_file_is_swept(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var wim = await scene.StudentAsync("Wim", AgeAnswer.OldEnough);
        await using var context = db.CreateDbContext();
        foreach (var (hash, account) in new[] { ('a', wim.Account), ('b', Owner.Account) })
        {
            context.Add(new RecoveryCode { Hash = new string(hash, Ticket.HashLength), Account = account, MadeAt = TimeProvider.System.GetUtcNow() });
        }

        await context.SaveChangesAsync(Ct);

        Done(await scene.Book<PrivacyBook>().EraseAsync(Owner, wim.Student, "erase", Operation(), Ct));

        Assert.Equal([Owner.Account], await context.Set<RecoveryCode>().AsNoTracking().Select(code => code.Account).ToListAsync(Ct));
        Assert.Equal(1, await context.Set<Job>().CountAsync(job => job.Kind == JobKind.Sweep, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_last_owner_who_can_sign_in_stays_though_another_was_closed(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (mara, tove) = (await OwnerAsync("Mara"), await OwnerAsync("Tove"));
        await using (var context = db.CreateDbContext())
        {
            await context.Users.Where(user => user.Id == tove.Account.Value).ExecuteUpdateAsync(row => row.SetProperty(user => user.DisabledAt, TimeProvider.System.GetUtcNow()), Ct);
        }

        Assert.Contains("only owner", Assert.Single(Refused(await scene.Book<PrivacyBook>().EraseAsync(mara, null, "erase", Operation(), Ct))).Message, StringComparison.Ordinal);

        async Task<Actor> OwnerAsync(string name)
        {
            var account = Done(await scene.Book<AccountRegister>().AdmitAsync(new NewAccount(name, NewEmail(name), GuardianScene.Password), Role.Owner, Operation(), Ct));
            return (await scene.Book<AccountBook>().ActorFor(account, Ct))! with { IsFresh = true };
        }
    }
}
