using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>OWASP ASVS 5.0: 6.2.2, 6.2.3, 6.2.4, 6.3.7, 6.3.8, 6.4.1, 6.4.3, 7.5.1.</summary>
public sealed class SignInBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Next = "nine gulls over the pier";

    [Fact]
    public void Everything_on_the_list_of_common_passwords_is_refused()
    {
        Assert.True(CommonPasswords.List.Count >= 3_000);
        Assert.All(CommonPasswords.List, password => Assert.NotNull(PasswordRule.ProblemWith(password, PasswordRule.ShortestWithSecondStep, CommonPasswords.List)));
    }

    [Theory, OnBothEngines]
    public async Task A_new_password_wants_the_old_one_and_signs_out_everywhere_else(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var (here, there) = (await scene.InAsync(account), await scene.InAsync(account));

        Assert.Equal("Old", Refused(await scene.SignIn.ChangePasswordAsync(here, "not this one at all", Next, Operation(), Ct)).Field);
        Assert.Equal("Password", Refused(await scene.SignIn.ChangePasswordAsync(here, Password, "too short", Operation(), Ct)).Field);
        Done(await scene.SignIn.ChangePasswordAsync(here, Password, Next, Operation(), Ct));

        Assert.NotNull(await scene.WhoAsync(here.Session!.Value));
        Assert.Null(await scene.WhoAsync(there.Session!.Value));
        Assert.Contains(await scene.MailAsync(), mail => mail is { Kind: MailKind.Notice, What: "PasswordChanged", To: "runa@harbour.example" });
    }

    [Theory, OnBothEngines]
    public async Task An_open_browser_gives_an_account_that_has_only_a_passkey_no_password(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account, SignInWay.Passkey);
        Done(await scene.Passkeys.AddAsync(runa, SecondStepTests.Passkey(1), "phone", Operation(), Ct));
        await scene.ForgetPasswordAsync(account);
        scene.Time.Advance(SessionRules.FreshFor);
        var stale = (await scene.WhoAsync(runa.Session!.Value))!;

        Assert.Equal(FreshSignIn.Field, Refused(await scene.SignIn.ChangePasswordAsync(stale, null, Next, Operation(), Ct)).Field);
        Assert.False((await scene.SignIn.ReadAsync(stale, Ct))!.HasPassword);
        Done(await scene.SignIn.ChangePasswordAsync(await scene.InAsync(account, SignInWay.Passkey), null, Next, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_teachers_password_alone_does_not_change_it_where_there_is_a_passkey_too(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);
        Done(await scene.Passkeys.AddAsync(await scene.InAsync(account), SecondStepTests.Passkey(1), "phone", Operation(), Ct));

        Assert.Equal(FreshSignIn.Field, Refused(await scene.SignIn.ChangePasswordAsync(await scene.InAsync(account), Password, Next, Operation(), Ct)).Field);
        Done(await scene.SignIn.ChangePasswordAsync(await scene.InAsync(account, SignInWay.Passkey), Password, Next, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_forgotten_password_is_chosen_anew_by_a_link_once_and_within_the_hour(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        var session = (await scene.InAsync(account)).Session!.Value;

        await scene.SignIn.AskForPasswordAsync("RUNA@harbour.example", Ct);
        var secret = Assert.Single(await scene.MailAsync()).Secret!;
        Assert.True(await scene.SignIn.IsGoodAsync(secret, Ct));
        Assert.True(await scene.SignIn.IsGoodAsync(secret, Ct));
        Assert.Equal("Password", Refused(await scene.SignIn.ChoosePasswordAsync(secret, "too short", Ct)).Field);
        Done(await scene.SignIn.ChoosePasswordAsync(secret, Next, Ct));

        Assert.Null(await scene.WhoAsync(session));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(secret, Next, Ct));
        await using var scope = db.Services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
        Assert.True(await users.CheckPasswordAsync((await users.FindByIdAsync(account.Value.ToString()))!, Next));
    }

    [Theory, OnBothEngines]
    public async Task A_link_that_is_late_cut_short_made_up_or_overtaken_opens_nothing(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        await scene.AccountAsync("runa@harbour.example");
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var first = (await scene.MailAsync())[^1].Secret!;
        scene.Time.Advance(TimeSpan.FromMinutes(1));
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var second = (await scene.MailAsync()).Select(mail => mail.Secret!).Single(secret => secret != first);

        foreach (var bad in new[] { first, second[..^1], second + "A", second.ToUpperInvariant(), "", null, new string('a', 43), new string('a', 10_000) })
        {
            Assert.False(await scene.SignIn.IsGoodAsync(bad, Ct));
            Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(bad, Next, Ct));
        }

        scene.Time.Advance(TimeSpan.FromMinutes(60));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(second, Next, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_many_who_use_one_link_at_once_one_chooses(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        await scene.AccountAsync("runa@harbour.example");
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var secret = Assert.Single(await scene.MailAsync()).Secret!;

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(() => scene.SignIn.ChoosePasswordAsync(secret, $"{Next} {i}", Ct), Ct)));

        Assert.Single(outcomes, outcome => outcome is Outcome<AccountId>.Done);
    }

    [Theory, OnBothEngines]
    public async Task An_address_nobody_has_gets_no_mail_and_one_that_asks_too_often_no_more(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        await scene.AccountAsync("runa@harbour.example");

        await scene.SignIn.AskForPasswordAsync("nobody@harbour.example", Ct);
        Assert.Empty(await scene.MailAsync());
        for (var i = 0; i < SignInBook.MostLinksAnHour + 3; i++)
        {
            await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        }

        Assert.Equal(SignInBook.MostLinksAnHour, (await scene.MailAsync()).Count);
    }

    [Theory, OnBothEngines]
    public async Task A_new_address_counts_once_its_link_was_opened_by_whoever_asked(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        var eve = await scene.InAsync(await scene.AccountAsync("eve@harbour.example"));
        Done(await scene.SignIn.AskForEmailAsync(runa, "runa@quay.example", Operation(), Ct));
        var link = (await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewEmail);
        Assert.Equal("runa@quay.example", link.To);

        Assert.IsType<Outcome<string>.NotFound>(await scene.SignIn.ConfirmEmailAsync(eve, link.Secret, Operation(), Ct));
        Assert.Equal("runa@harbour.example", (await scene.SignIn.ReadAsync(runa, Ct))!.Email);
        Done(await scene.SignIn.ConfirmEmailAsync(runa, link.Secret, Operation(), Ct));

        Assert.Equal("runa@quay.example", (await scene.SignIn.ReadAsync(runa, Ct))!.Email);
        Assert.IsType<Outcome<string>.NotFound>(await scene.SignIn.ConfirmEmailAsync(runa, link.Secret, Operation(), Ct));
        Assert.Contains(await scene.MailAsync(), mail => mail is { Kind: MailKind.Notice, What: "EmailChanged", To: "runa@harbour.example" });
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_a_new_password_does_not_outlive_the_address_it_went_to(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var old = Assert.Single(await scene.MailAsync()).Secret;
        Done(await scene.SignIn.AskForEmailAsync(runa, "runa@quay.example", Operation(), Ct));
        var operation = Operation();
        var link = (await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewEmail).Secret;
        Done(await scene.SignIn.ConfirmEmailAsync(runa, link, operation, Ct));
        Assert.Equal("runa@quay.example", Done(await scene.SignIn.ConfirmEmailAsync(runa, link, operation, Ct)));

        Assert.False(await scene.SignIn.IsGoodAsync(old, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(old, Next, Ct));
    }

    [Theory, OnBothEngines]
    public async Task One_account_sends_few_links_to_new_addresses_however_many_it_names(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var eve = await scene.InAsync(await scene.AccountAsync("eve@harbour.example"));
        for (var i = 0; i < 10; i++)
        {
            var asked = await scene.SignIn.AskForEmailAsync(eve, $"stranger{i}@quay.example", Operation(), Ct);
            Assert.Equal(i < SignInBook.MostLinksAnHour, asked is Outcome<string>.Done);
        }

        Assert.Equal(SignInBook.MostLinksAnHour, (await scene.MailAsync()).Count);
    }

    [Theory, OnBothEngines]
    public async Task An_address_of_their_own_is_proved_though_nobody_could_give_it_today(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@pier"));

        Assert.Equal("runa@pier", Done(await scene.SignIn.AskForEmailAsync(runa, "Runa@pier", Operation(), Ct)));
        Refused(await scene.SignIn.AskForEmailAsync(runa, "other@pier", Operation(), Ct));
        Done(await scene.SignIn.ConfirmEmailAsync(runa, Assert.Single(await scene.MailAsync()).Secret, Operation(), Ct));

        await using var db = scene.Databases.CreateDbContext();
        Assert.True((await db.Users.SingleAsync(user => user.Id == runa.Account.Value, Ct)).EmailConfirmed);
    }

    [Theory, OnBothEngines]
    public async Task What_others_ask_for_hinders_nobody_from_showing_that_an_address_is_theirs(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var (runa, eve) = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example")), await scene.InAsync(await scene.AccountAsync("eve@harbour.example")));
        for (var i = 0; i < SignInBook.MostLinksAnHour; i++)
        {
            Done(await scene.SignIn.AskForEmailAsync(eve, "runa@harbour.example", Operation(), Ct));
        }

        scene.Time.Advance(TimeSpan.FromSeconds(1)); // mails of one moment have no order
        Done(await scene.SignIn.AskForEmailAsync(runa, "runa@harbour.example", Operation(), Ct));

        Done(await scene.SignIn.ConfirmEmailAsync(runa, (await scene.MailAsync()).Single(mail => mail.About == runa.Account.Value).Secret, Operation(), Ct));
        Assert.Contains("your address already", Refused(await scene.SignIn.AskForEmailAsync(runa, "Runa@harbour.example", Operation(), Ct)).Message, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task An_address_that_another_account_has_is_not_taken(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        await scene.AccountAsync("eve@harbour.example");

        Done(await scene.SignIn.AskForEmailAsync(runa, "EVE@harbour.example", Operation(), Ct));
        var link = (await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewEmail);

        Assert.IsType<Outcome<string>.NotFound>(await scene.SignIn.ConfirmEmailAsync(runa, link.Secret, Operation(), Ct));
        Assert.Equal("runa@harbour.example", (await scene.SignIn.ReadAsync(runa, Ct))!.Email);
    }

    [Theory, OnBothEngines]
    public async Task What_cannot_be_taken_back_wants_a_fresh_sign_in(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;
        scene.Time.Advance(SessionRules.FreshFor);
        var stale = (await scene.WhoAsync(session))!;

        Assert.Equal(FreshSignIn.Field, Refused(await scene.SignIn.AskForEmailAsync(stale, "runa@quay.example", Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SecondStep.BeginAsync(stale, Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.Passkeys.AddAsync(stale, SecondStepTests.Passkey(1), "phone", Operation(), Ct)).Field);
        Assert.Empty(await scene.MailAsync());
    }
}
