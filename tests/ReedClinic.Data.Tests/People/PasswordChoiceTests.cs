using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>Which password can be chosen, and which link still chooses one. OWASP ASVS 5.0: 6.2.4, 6.2.11, 6.2.12, 6.4.1, 16.3.2.</summary>
public sealed class PasswordChoiceTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Next = "nine gulls over the pier";

    [Theory, OnBothEngines]
    public async Task Nobody_changes_to_a_common_password_their_name_or_their_address(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("kestrelwing@saltmarsh.example"));
        var common = CommonPasswords.List.Where(one => one.Length >= PasswordRule.Shortest).First(one => PasswordRule.ProblemWith(one) is null);

        foreach (var wanted in new[] { common, "kestrelwing saltmarsh", "runarunaruna runa" })
        {
            Assert.Equal("Password", Refused(await scene.SignIn.ChangePasswordAsync(runa, Password, wanted, Operation(), Ct)).Field);
        }
    }

    [Theory, OnBothEngines]
    public async Task No_account_is_made_with_a_common_password_their_name_or_their_address(ClinicEngine engine)
    {
        var register = new LinkScene(await databases.FreshAsync(engine)).Register;
        var common = CommonPasswords.List.Where(one => one.Length >= PasswordRule.Shortest).First(one => PasswordRule.ProblemWith(one) is null);

        foreach (var wanted in new[] { common, "kestrelwing saltmarsh", "marenmarenmaren" })
        {
            var made = await register.AdmitAsync(new NewAccount("Maren", "kestrelwing@saltmarsh.example", wanted), Role.Student, Operation(), Ct);
            Assert.Equal(nameof(NewAccount.Password), Refused(made).Field);
        }
    }

    [Theory, OnBothEngines]
    public async Task A_password_that_was_changed_ends_every_link_that_was_asked_for_before(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var link = Assert.Single(await scene.MailAsync()).Secret;

        Done(await scene.SignIn.ChangePasswordAsync(runa, Password, Next, Operation(), Ct));

        Assert.False(await scene.SignIn.IsGoodAsync(link, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_chooses_nothing_once_the_account_has_another_address_or_an_unproved_one_works_here(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var (moved, hired) = (await scene.AccountAsync("runa@harbour.example"), await scene.AccountAsync("edda@harbour.example"));
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        await scene.SignIn.AskForPasswordAsync("edda@harbour.example", Ct);
        var links = (await scene.MailAsync()).ToDictionary(mail => mail.To, mail => mail.Secret);
        await using (var context = db.CreateDbContext())
        {
            await context.Users.Where(user => user.Id == moved.Value).ExecuteUpdateAsync(row => row.SetProperty(user => user.Email, "runa@quay.example"), Ct);
            context.Add(new IdentityUserRole<Guid> { UserId = hired.Value, RoleId = (await context.Roles.SingleAsync(role => role.Name == nameof(Role.Teacher), Ct)).Id });
            await context.SaveChangesAsync(Ct);
        }

        foreach (var link in links.Values)
        {
            Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(link, Next, Ct));
        }

        Assert.Equal(2, await scene.ToldAsync(AuditEvent.LinkRefused));
    }

    [Theory, OnBothEngines]
    public async Task One_address_gets_few_links_however_many_accounts_name_it(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        for (var i = 0; i < SignInBook.MostLinksAnHour + 2; i++)
        {
            var eve = await scene.InAsync(await scene.AccountAsync($"eve{i}@harbour.example"));
            var asked = await scene.SignIn.AskForEmailAsync(eve, "stranger@quay.example", Operation(), Ct);
            Assert.Equal(i < SignInBook.MostLinksAnHour, asked is Outcome<string>.Done);
        }

        Assert.Equal(SignInBook.MostLinksAnHour, (await scene.MailAsync()).Count(mail => mail.Kind == MailKind.NewEmail));
    }
}
