using ReedClinic.Data;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>The program's settings and records without its pages, for a command that is run once and lets nobody in.</summary>
public static class CommandHost
{
    /// <summary>Builds it.</summary>
    /// <param name="args">What stood after the command's word.</param>
    public static WebApplication Build(string[] args)
    {
        var builder = WebApplication.CreateBuilder(args);
        builder.AddSecrets();
        builder.AddStudioLog();
        builder.Services.AddClinicData(builder.Configuration, builder.Environment.ContentRootPath);
        return builder.Build();
    }
}
