using Microsoft.AspNetCore.Hosting;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Injection;

/// <summary>A host where one account may write as much as it likes: hundreds of texts in a minute are what these tests are for.</summary>
public sealed class HostileHost : ClinicHost
{
    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.UseSetting("Writes:Burst", "100000");
    }
}
