namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Marks an address that gives out what somebody sent: see <see cref="GuardHeaders"/>.</summary>
public sealed record SandboxedFile;
