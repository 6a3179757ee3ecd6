using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Circuits;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>The whole application on a real port, because a circuit needs a socket. Its clock stands until a test moves it.</summary>
public class CircuitHost : ClinicHost
{
    public CircuitHost()
    {
        UseKestrel(0);
        StartServer();
        var address = new Uri(Services.GetRequiredService<IServer>().Features.GetRequiredFeature<IServerAddressesFeature>().Addresses.First());
        Site = new UriBuilder(address) { Host = "localhost" }.Uri;
    }

    /// <summary>Where it listens.</summary>
    public Uri Site { get; }

    /// <summary>The application's clock.</summary>
    public FakeTimeProvider Clock { get; } = new(TimeProvider.System.GetUtcNow());

    public override HttpClient Visitor() => CookieClient.For(Site);

    /// <summary>A new teacher, signed in.</summary>
    public async Task<CookieClient> AtTheBench(string name = "Ilse") => (CookieClient)await Teacher(name);

    /// <summary>The account of somebody whose name nobody else has.</summary>
    public AccountId AccountOf(string name)
    {
        using var scope = Services.CreateScope();
        return new(scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>().Users.Single(account => account.DisplayName == name).Id);
    }

    /// <summary>Takes the teacher's role from an account; nobody is told.</summary>
    public async Task TakeRoleAsync(AccountId account)
    {
        await using var scope = Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
        Assert.True((await accounts.RemoveFromRoleAsync((await accounts.FindByIdAsync($"{account.Value}"))!, nameof(Role.Teacher))).Succeeded);
    }

    protected override HttpClient VisitorWith(Cookie cookie)
    {
        var visitor = CookieClient.For(Site);
        visitor.Cookies.Add(Site, cookie);
        return visitor;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.UseSetting("Web:PlainHttpOnLoopback", "true");
        builder.ConfigureTestServices(services => services.Replace(ServiceDescriptor.Singleton<TimeProvider>(Clock)));
    }
}
