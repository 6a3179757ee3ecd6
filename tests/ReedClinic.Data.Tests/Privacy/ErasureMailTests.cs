using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>Whoever was erased is told, though nothing of theirs is left: Regulation (EU) 2016/679, Articles 12(3) and 19.</summary>
public sealed class ErasureMailTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_guardian_who_erases_their_student_is_told_and_so_is_the_student_though_their_rows_are_gone(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync("Pia Unmistakable");
        var own = (await scene.Book<StudentBook>().MeAsync(student, Ct))!.Email!;
        var guardian = await scene.AgreedAsync(student, "Rosa Kestrel");
        var theirs = (await scene.Book<SignInBook>().ReadAsync(guardian, Ct))!.Email;

        Done(await scene.Book<PrivacyBook>().EraseAsync(guardian, student.Student, "erase", Operation(), Ct));

        var mails = await scene.MailsAsync();
        var toStudent = Assert.Single(mails, mail => mail.Kind == MailKind.Erased);
        var toGuardian = Assert.Single(mails, mail => mail.Kind == MailKind.WardErased);
        Assert.Equal((own, "Pia", null, null), (toStudent.To, toStudent.Name, toStudent.Path, toStudent.About));
        Assert.Equal((theirs, "Pia", "/wards"), (toGuardian.To, toGuardian.Ward, toGuardian.Path));
        Assert.DoesNotContain(mails, mail => mail.Kind == MailKind.GuardianAnswered && mail.To == own); // what waited for the erased went with them
        await using var context = db.CreateDbContext();
        Assert.False(await context.Users.AnyAsync(user => user.Email == own, Ct));
        Assert.False(await context.Set<Job>().AnyAsync(job => job.About == student.Student!.Value.Value || job.About == student.Account.Value, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_student_who_erases_themselves_is_told_once_and_their_guardian_too(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var student = await scene.StudentAsync();
        await scene.AgreedAsync(student);

        Done(await scene.Book<PrivacyBook>().EraseAsync(student with { IsFresh = true }, null, "erase", Operation(), Ct));

        var mails = await scene.MailsAsync();
        Assert.Single(mails, mail => mail.Kind == MailKind.Erased);
        Assert.Single(mails, mail => mail.Kind == MailKind.WardErased);
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_has_themselves_erased_is_told_and_their_student_is_not_called_erased(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        var theirs = (await scene.Book<SignInBook>().ReadAsync(guardian, Ct))!.Email;
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));

        Done(await scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));

        var mails = await scene.MailsAsync();
        Assert.Equal(theirs, Assert.Single(mails, mail => mail.Kind == MailKind.Erased).To);
        Assert.DoesNotContain(mails, mail => mail.Kind == MailKind.WardErased);
    }

    [Theory, OnBothEngines]
    public async Task While_no_mail_goes_out_nothing_of_the_erased_waits_in_one(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync("Pia Unmistakable");
        var guardian = await scene.AgreedAsync(student);
        var off = new Outbox(db.Services.GetRequiredService<IDataProtectionProvider>(), TimeProvider.System, new OutboxSettings(GoesOut: false));

        Done(await ActivatorUtilities.CreateInstance<PrivacyBook>(db.Services.CreateScope().ServiceProvider, off).EraseAsync(guardian, student.Student, "erase", Operation(), Ct));

        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.Kind is MailKind.Erased or MailKind.WardErased);
    }
}
