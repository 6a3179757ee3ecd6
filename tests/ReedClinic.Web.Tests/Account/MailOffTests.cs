using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>While no mail goes out the pages say so, and no form makes a link that would reach nobody.</summary>
public sealed class MailOffTests(MailOffTests.SilentHost host) : IClassFixture<MailOffTests.SilentHost>
{
    private const string Words = "can’t send mail just now";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/account/sign-up", "ask-for-link")]
    [InlineData("/begin", "ask-for-link")]
    [InlineData("/account/forgotten", "forgotten")]
    public async Task A_form_from_before_asks_for_nothing(string page, string form)
    {
        await host.OpenStudio();
        var (_, email) = await host.AccountAsync("gerd");
        using var visitor = host.Visitor();

        await SendAsync(visitor, page, form, ("Form.Email", email));
    }

    [Fact]
    public async Task Another_address_is_not_asked_about()
    {
        using var student = await host.SignedIn((await host.AccountAsync("gerda")).Account);
        Assert.Contains(Words, WebUtility.HtmlDecode((await student.See("/account/email")).Page), StringComparison.Ordinal);

        await SendAsync(student, "/account/email", "email", ("Form.Email", ClinicHost.NewEmail("elsewhere")));
    }

    [Fact]
    public async Task A_guardian_is_not_asked()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var account = Done(await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(
            new NewAccount("Gitte", ClinicHost.NewEmail("gitte"), ClinicHost.Password) { Age = AgeAnswer.Younger }, Role.Student, Parcel.NewOperation(), Ct));
        using var student = await host.SignedIn(account);
        Assert.Contains(Words, WebUtility.HtmlDecode((await student.See("/guardian")).Page), StringComparison.Ordinal);

        await SendAsync(student, "/guardian", "guardian", ("Form.Name", "Rosa"), ("Form.Email", ClinicHost.NewEmail("rosa")));
    }

    [Fact]
    public async Task A_link_that_another_browser_began_with_is_not_sent_anew()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var owner = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: false, IsOwner: true);
        var link = $"/begin/{Done(await scope.ServiceProvider.GetRequiredService<BeginBook>().SendAsync(owner, ClinicHost.NewEmail("gudrun"), byHand: true, Parcel.NewOperation(), Ct)).Secret}";
        using var phone = host.Visitor();
        using (var begun = await (await Form.At(phone, link)).Set("Form.Name", "Gudrun").Set("Form.Age", "OldEnough").Post())
        {
            Assert.Equal("/", begun.Leads());
        }

        using var laptop = host.Visitor();
        var page = WebUtility.HtmlDecode((await laptop.See(link)).Page);
        Assert.Contains(Words, page, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"send-new\"", page, StringComparison.Ordinal);

        await SendAsync(laptop, link, "send-new");
    }

    [Fact]
    public async Task An_owner_is_told_that_mail_is_off()
    {
        await using var own = new SilentHost();
        using var owner = await own.SignedIn(await own.OpenStudio());

        Assert.Contains("Mail is off", (await owner.See("/people")).Page, StringComparison.Ordinal);
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    // As from a window that was opened while mail was on: with a token of this site, and the name of the form.
    private async Task SendAsync(HttpClient who, string page, string form, params (string Name, string Value)[] fields)
    {
        var before = await LinksAsync();
        var sent = (await Form.At(who, page, "/lamp")).Without("lamp").Set("_handler", form);
        foreach (var (name, value) in fields)
        {
            sent.Set(name, value);
        }

        using var answer = await sent.PostTo(page);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode); // the page has no such form now
        Assert.Equal(before, await LinksAsync());
    }

    private async Task<(int Links, int Mails)> LinksAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        return (await db.Set<Ticket>().CountAsync(Ct), await db.Set<Job>().CountAsync(job => job.Kind == JobKind.Mail, Ct));
    }

    /// <summary>The program without a mail server.</summary>
    public sealed class SilentHost : ClinicHost
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting("Mail:Folder", "");
        }
    }
}
