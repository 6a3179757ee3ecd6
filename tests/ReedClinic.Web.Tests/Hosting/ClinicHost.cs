using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

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
        var visitor = Visitor();
        var form = await Form.At(visitor, "/account/sign-up");
        form.Set("Form.Name", name).Set("Form.Age", "OldEnough").Set("Form.Email", NewEmail(name)).Set("Form.Password", Password);
        using var answer = await form.Post();
        Assert.Equal("/", answer.Leads());
        return visitor;
    }

    /// <summary>A new teacher, signed in.</summary>
    public async Task<HttpClient> Teacher(string name = "Ilse")
    {
        var email = NewEmail(name);
        using (var scope = Services.CreateScope())
        {
            var accounts = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
            var account = new ClinicAccount { Id = Parcel.NewOperation().Value, UserName = email, Email = email, DisplayName = name, MadeBy = Parcel.NewOperation() };
            Assert.True((await accounts.CreateAsync(account, Password)).Succeeded);
            Assert.True((await accounts.AddToRoleAsync(account, nameof(Role.Teacher))).Succeeded);
        }

        var visitor = Visitor();
        var form = await Form.At(visitor, "/account/sign-in");
        form.Set("Form.Email", email).Set("Form.Password", Password);
        using var answer = await form.Post();
        Assert.Equal("/", answer.Leads());
        return visitor;
    }

    /// <summary>An address that nobody has yet.</summary>
    public static string NewEmail(string name) => $"{name}-{Interlocked.Increment(ref _people)}@harbour.example".ToLowerInvariant();

    private static int _people;

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Production");
        builder.UseStaticWebAssets(); // the build output, also where a published one is expected
        builder.UseSetting("ConnectionStrings:Clinic", $"Data Source={Path.Combine(_folder, "clinic.db")}");

        // Hashing is made quick here; how strong it is in the real thing is a test of the data project.
        builder.ConfigureTestServices(services => services.Configure<PasswordHasherOptions>(o => o.IterationCount = 1_000));
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
        GC.SuppressFinalize(this);
    }
}
