using System.Net;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.Mvc.Testing.Handlers;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>The whole application in memory on a database of its own, over https so that secure cookies travel.</summary>
public class ClinicHost : WebApplicationFactory<Program>
{
    /// <summary>The password of everybody in these tests.</summary>
    public const string Password = "seven boats in the harbour";

    private static readonly Uri Address = new("https://localhost");

    private readonly string _folder = Directory.CreateTempSubdirectory("reedclinic-web-").FullName;

    /// <summary>A visitor whose redirects are not followed.</summary>
    public virtual HttpClient Visitor() => CreateClient(new WebApplicationFactoryClientOptions { BaseAddress = Address, AllowAutoRedirect = false });

    /// <summary>A new student, signed in.</summary>
    public async Task<HttpClient> Student(string name = "Sanne")
    {
        return await SignedIn(await Admit(name, NewEmail(name)), SignInWay.Password);
    }

    /// <summary>A student's account, made without a link.</summary>
    public async Task<AccountId> Admit(string name, string email)
    {
        await using var scope = Services.CreateAsyncScope();
        var wanted = new NewAccount(name, email, Password) { Age = AgeAnswer.OldEnough };
        return Assert.IsType<Outcome<AccountId>.Done>(await scope.ServiceProvider.GetRequiredService<AccountRegister>()
            .AdmitAsync(wanted, Role.Student, Parcel.NewOperation(), TestContext.Current.CancellationToken)).Value;
    }

    /// <summary>The path of a link to join, as an owner would have sent it.</summary>
    public async Task<string> Invite(string email, Role role = Role.Student)
    {
        await using var scope = Services.CreateAsyncScope();
        var owner = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: false, IsOwner: true);
        var sent = await scope.ServiceProvider.GetRequiredService<InvitationBook>().InviteAsync(owner, role, email, byHand: false, Parcel.NewOperation(), TestContext.Current.CancellationToken);
        return $"/join/{Assert.IsType<Outcome<SentLink>.Done>(sent).Value.Secret}";
    }

    /// <summary>The path of the link in the latest mail to an address; waits until one is there.</summary>
    public Task<string> Mailed(string email, string path) => MailedLinks.PathAsync(MailFolder, email, path, TestContext.Current.CancellationToken);

    /// <summary>Opens the studio, so that strangers may ask for links.</summary>
    /// <returns>Its owner; nobody in particular when it is open already.</returns>
    public async Task<AccountId> OpenStudio()
    {
        await using var scope = Services.CreateAsyncScope();
        var opened = await scope.ServiceProvider.GetRequiredService<StudioBook>().Open(
            Services.GetRequiredService<FirstRunCode>().Text, "Quay Reeds", null, new NewAccount("Mara", NewEmail("mara"), Password), Parcel.NewOperation(), TestContext.Current.CancellationToken);
        return (opened as Outcome<AccountId>.Done)?.Value ?? default;
    }

    /// <summary>True where the limits are those that the program has unless its settings say otherwise.</summary>
    protected virtual bool IsLimited => false;

    /// <summary>Where mails are written.</summary>
    public string MailFolder => Path.Combine(_folder, "mail");

    /// <summary>A new teacher, signed in.</summary>
    public async Task<HttpClient> Teacher(string name = "Ilse")
    {
        var email = NewEmail(name);
        AccountId account;
        using (var scope = Services.CreateScope())
        {
            var accounts = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
            var made = new ClinicAccount { Id = Parcel.NewOperation().Value, UserName = email, Email = email, DisplayName = name, MadeBy = Parcel.NewOperation() };
            Assert.True((await accounts.CreateAsync(made, Password)).Succeeded);
            Assert.True((await accounts.AddToRoleAsync(made, nameof(Role.Teacher))).Succeeded);
            account = new AccountId(made.Id);
        }

        return await SignedIn(account);
    }

    /// <summary>Somebody who is signed in as if by the page, without its work.</summary>
    public async Task<HttpClient> SignedIn(AccountId who, SignInWay way = SignInWay.Passkey) => VisitorWith(await CookieOfAsync(who, way));

    private async Task<Cookie> CookieOfAsync(AccountId who, SignInWay way)
    {
        var session = await Services.GetRequiredService<SessionRegister>().BeginAsync(who, way, "Firefox on Android", null, TestContext.Current.CancellationToken);
        var scheme = Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(IdentityConstants.ApplicationScheme);
        var ticket = new AuthenticationTicket(SessionCookie.Of(Assert.NotNull(session)), IdentityConstants.ApplicationScheme);
        ticket.Properties.ExpiresUtc = TimeProvider.System.GetUtcNow().AddDays(1);
        return new Cookie(scheme.Cookie.Name!, scheme.TicketDataFormat.Protect(ticket), "/");
    }

    /// <summary>The same with a copy of the cookie in another browser.</summary>
    public async Task<(HttpClient Here, HttpClient Copy)> SignedInTwiceByOneCookie(AccountId who)
    {
        var cookie = await CookieOfAsync(who, SignInWay.Passkey);
        return (VisitorWith(cookie), VisitorWith(new Cookie(cookie.Name, cookie.Value, cookie.Path)));
    }

    /// <summary>A visitor who brings a cookie along.</summary>
    protected virtual HttpClient VisitorWith(Cookie cookie)
    {
        var cookies = new CookieContainer();
        cookies.Add(Address, cookie);
        return CreateDefaultClient(Address, new CookieContainerHandler(cookies));
    }

    /// <summary>An address that nobody has yet.</summary>
    public static string NewEmail(string name) => $"{name}-{Interlocked.Increment(ref _people)}@harbour.example".ToLowerInvariant();

    private static int _people;

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Production");
        builder.UseStaticWebAssets(); // the build output, also where a published one is expected
        var file = Path.Combine(_folder, "clinic.db");
        EmptyStudio.CopyTo(file);
        builder.UseSetting("ConnectionStrings:Clinic", $"Data Source={file}");
        builder.UseSetting("Mail:Folder", MailFolder);
        builder.UseSetting("Web:Address", Address.ToString());

        // Everybody comes from one address here, and often; the limits have tests of their own.
        foreach (var limit in IsLimited ? [] : RateLimits.Settings)
        {
            builder.UseSetting(limit, "100000");
        }

        // Hashing is made quick here; how strong it is in the real thing is a test of the data project.
        builder.ConfigureTestServices(services => services.Configure<PasswordHasherOptions>(o => o.IterationCount = 1_000));
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        try
        {
            Directory.Delete(_folder, recursive: true);
        }
        catch (IOException)
        {
            // A worker wrote its last file while the folder went: what is left lies in the system's own folder for such things.
        }

        GC.SuppressFinalize(this);
    }
}
