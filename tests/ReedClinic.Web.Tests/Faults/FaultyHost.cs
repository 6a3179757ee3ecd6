using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Faults;

/// <summary>The application with a database in which a step of a request can go wrong.</summary>
public sealed class FaultyHost : ClinicHost
{
    public FaultAt At { get; } = new();

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureTestServices(services => services.ConfigureDbContext<SqliteClinicDb>(options => options.AddInterceptors(At)));
    }

    /// <summary>What is armed in a test counts in the requests that it makes.</summary>
    public void FollowRequests() => Server.PreserveExecutionContext = true;
}
